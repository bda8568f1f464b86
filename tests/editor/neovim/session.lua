-- A session at a sheet with slips, in an editor that is sent findings and cannot ask for them. Writes what it saw to PAPERVOLT_SEEN, as JSON.
local buffer = vim.api.nvim_get_current_buf()
local uri = vim.uri_from_bufnr(buffer)
local patience = 20000

local function lines() return vim.api.nvim_buf_get_lines(buffer, 0, -1, false) end

-- Line and column from 0 of a text and of what stands `behind` it, in UTF-16 units as the protocol counts.
local function place(text, behind)
  for number, line in ipairs(lines()) do
    local from = line:find(text, 1, true)
    if from then
      local column = from - 1 + (behind and #text or 0)
      return { line = number - 1, character = vim.str_utfindex(line:sub(1, column)) }
    end
  end
  error('not in the sheet: ' .. text)
end

local function ask(method, params)
  params.textDocument = { uri = uri }
  local answers, trouble = vim.lsp.buf_request_sync(buffer, method, params, patience)
  if trouble then error(method .. ': ' .. trouble) end
  for _, answer in pairs(answers) do
    if answer.error then error(method .. ': ' .. answer.error.message) end
    return answer.result
  end
end

local function codes()
  return vim.tbl_map(function(finding) return finding.code end, vim.diagnostic.get(buffer))
end

local function session()
  local seen = { version = tostring(vim.version().major .. '.' .. vim.version().minor) }

  vim.wait(patience, function() return #codes() > 0 end)
  seen.findings = vim.diagnostic.get(buffer)

  -- The slip is mended by the fix that the server offers for it.
  local slip = place('1,5 V')
  local actions = ask('textDocument/codeAction', {
    range = { start = slip, ['end'] = slip },
    context = { diagnostics = {}, only = { 'quickfix' } },
  })
  seen.fix = actions[1].title
  vim.lsp.util.apply_workspace_edit(actions[1].edit, 'utf-16')
  vim.wait(patience, function() return #codes() == 0 end)
  seen.after_fix = codes()

  seen.hover = ask('textDocument/hover', { position = place('M  at (115') }).contents.value

  local offered = ask('textDocument/completion', { position = place('probe   M  ', true) })
  seen.completion = vim.tbl_map(function(item) return item.label end, offered.items or offered)

  vim.lsp.util.apply_workspace_edit(
    ask('textDocument/rename', { position = place('M  at (115'), newName = 'K' }), 'utf-16')
  vim.lsp.util.apply_text_edits(
    ask('textDocument/formatting', { options = { tabSize = 2, insertSpaces = true } }), buffer, 'utf-16')
  seen.text = lines()
  return seen
end

local went, seen = pcall(session)
vim.fn.writefile({ vim.fn.json_encode(went and seen or { failed = tostring(seen) }) }, os.getenv('PAPERVOLT_SEEN'))
vim.cmd('qa!')
