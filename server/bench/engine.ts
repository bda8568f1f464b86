/**
 * Time and bounds of the engine, stage by stage, beside a calibration kernel and plain relaxation in the same process. Times in ms and
 * as multiples of the calibration kernel; the smallest and the middle of many runs.
 */
import { performance } from 'node:perf_hooks';
import { circuitOf, engine, problemOf, readSheet, resolveSetups, solveCircuit } from '../../shared/index.ts';
import { calibrationKernel, relax } from './peers.ts';
import { type BenchScene, scenes } from './scenes.ts';
import { measure, printTable, type Timing, timing } from './table.ts';

type Stage = 'mesh' | 'primal' | 'dual' | 'contours' | 'lines';
const stages: readonly Stage[] = ['mesh', 'primal', 'dual', 'contours', 'lines'];
const tools = { fans: engine.fanStore(512), workspace: new engine.Workspace() };

interface Row {
  readonly scene: string;
  readonly order: number;
  readonly unknowns: number;
  readonly gap: number;
  readonly times_ms: Readonly<Record<Stage | 'total', Timing>>;
  /** `total.min` over the calibration kernel's. */
  readonly kernels: number;
}

interface PeerRow {
  readonly scene: string;
  readonly sweeps: number;
  readonly error: number;
  readonly time_ms: Timing;
  readonly kernels: number;
}

const runs = 25;
const warmUp = 5;

export function benchEngine(json: boolean): void {
  const calibration = measure(calibrationKernel, 12);
  const rows = scenes.flatMap((scene) =>
    scene.orders.map((order) => benchScene(scene, order, calibration.min)),
  );
  const peers = ['two bars', 'spike and bar'].map((name) => relaxed(name, calibration.min));
  const found = { node: process.version, calibration_ms: calibration, rows, relaxation_1mm: peers };
  if (json) console.log(JSON.stringify(found, null, 2));
  else report(found);
}

function benchScene(scene: BenchScene, order: number, kernel_ms: number): Row {
  const { domain, potentials } = sceneOf(scene);
  const levels = Array.from({ length: 19 }, (_, index) => (index + 1) / 20);
  const times: Record<Stage, number[]> = { mesh: [], primal: [], dual: [], contours: [], lines: [] };
  const totals: number[] = [];
  let unknowns = 0;
  const field = solved(domain, order);
  for (let run = 0; run < runs; run++) {
    let last = performance.now();
    const lap = (stage: Stage): void => {
      const now = performance.now();
      if (run >= warmUp) times[stage].push(now - last);
      last = now;
    };
    const started = last;
    const frame = engine.frameOf(engine.meshDomain(domain));
    if (!frame) throw new Error(`${scene.name} has no mesh`);
    lap('mesh');
    const base = engine.discretise(frame, order, domain.sheet_ohm);
    const primal = engine.solvePrimal(base, domain.conductors, tools);
    if (!primal) throw new Error(`${scene.name} was not solved`);
    const potential = primal.system.potential(potentials);
    unknowns = primal.unknowns;
    lap('primal');
    const dual = engine.solveDual(base, domain.conductors, tools);
    if (!dual) throw new Error(`${scene.name} has no stream function`);
    const stream = dual.stream(potentials);
    lap('dual');
    engine.equipotentialLines(potential, levels);
    lap('contours');
    engine.fieldLines({ ...field, primal: primal.system, stream: () => stream }, potentials, 20);
    lap('lines');
    if (run >= warmUp) totals.push(last - started);
  }
  const total = timing(totals);
  const byStage = Object.fromEntries(stages.map((stage) => [stage, timing(times[stage])])) as Record<
    Stage,
    Timing
  >;
  return {
    scene: scene.name,
    order,
    unknowns,
    gap: field.gap,
    times_ms: { ...byStage, total },
    kernels: total.min / kernel_ms,
  };
}

function relaxed(name: string, kernel_ms: number): PeerRow {
  const scene = scenes.find((each) => each.name === name);
  if (!scene) throw new Error(`no scene ${name}`);
  const bar = (x: number, y: number): boolean => Math.abs(x - 180) <= 3 && Math.abs(y - 80) <= 60;
  const metal =
    name === 'two bars'
      ? (x: number, y: number): boolean => Math.abs(x - 60) <= 3 && Math.abs(y - 80) <= 60
      : (x: number, y: number): boolean =>
          x >= 20 && x <= 120 && Math.abs(y - 80) <= (8 * (120 - x)) / 100 + 1e-9;
  const fixed = (x: number, y: number): number | null => (metal(x, y) ? 0 : bar(x, y) ? 1 : null);
  const { domain } = sceneOf(scene);
  const field = solved(domain, 10);
  const reference = ((field.upper_S[0] ?? 0) + (field.lower_S[0] ?? 0)) / 2;
  const found = relax(240, 160, 1, fixed);
  const time_ms = measure(() => relax(240, 160, 1, fixed), 5);
  return {
    scene: name,
    sweeps: found.sweeps,
    error: Math.abs(found.conductance / reference - 1),
    time_ms,
    kernels: time_ms.min / kernel_ms,
  };
}

function sceneOf({ block }: BenchScene) {
  const { blocks } = readSheet({ name: 'bench.md', text: `\`\`\`electrodes\n${block}\n\`\`\`\n` });
  const [setup] = resolveSetups(blocks.map((each) => each.block));
  if (!setup?.solvable) throw new Error(setup?.findings.map(({ message }) => message).join('\n'));
  const domain = engine.domainOf(problemOf(setup));
  const field = solved(domain, 4);
  const { state } = solveCircuit(circuitOf(setup), { upper_S: field.upper_S, lower_S: field.lower_S });
  return { domain, potentials: state.conductor_V };
}

function solved(domain: ReturnType<typeof engine.domainOf>, order: number) {
  const outcome = engine.solveDomain(domain, { gap: 0, maxUnknowns: 400_000, order });
  if (!outcome.ok) throw new Error(outcome.trouble.kind);
  return outcome.field;
}

interface Found {
  readonly calibration_ms: Timing;
  readonly rows: readonly Row[];
  readonly relaxation_1mm: readonly PeerRow[];
}

function report({ calibration_ms, rows, relaxation_1mm }: Found): void {
  const ms = ({ min, median }: Timing): string => `${min.toFixed(1)} / ${median.toFixed(1)}`;
  console.log(
    `Node ${process.version}; calibration kernel ${ms(calibration_ms)} ms (min / median), the unit "k" below.`,
  );
  const head = ['scene', 'order', 'unknowns', 'gap', ...stages, 'total', 'k'];
  const body = rows.map(({ scene, order, unknowns, gap, times_ms, kernels }) => [
    scene,
    String(order),
    String(unknowns),
    gap.toExponential(1),
    ...stages.map((stage) => ms(times_ms[stage])),
    ms(times_ms.total),
    kernels.toFixed(1),
  ]);
  printTable([head, ...body]);
  console.log('\nRelaxation on a grid of 1 mm (error against the engine at order 10):');
  printTable([
    ['scene', 'sweeps', 'error', 'time', 'k'],
    ...relaxation_1mm.map(({ scene, sweeps, error, time_ms, kernels }) => [
      scene,
      String(sweeps),
      error.toExponential(1),
      ms(time_ms),
      kernels.toFixed(1),
    ]),
  ]);
}
