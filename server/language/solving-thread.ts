/**
 * The inside of the thread that solves, on any platform: it steps the newest of its tasks, and between two stages it takes new orders, so
 * that a task can be stopped and a short one comes between.
 */
import type { Stages } from '../../shared/index.ts';
import { Desk } from './desk.ts';
import type { Order, Reply } from './orders.ts';
import { plainBytes } from './plain-bytes.ts';
import { carryOut, type ResultOf, type TaskKind } from './tasks.ts';

export interface Platform {
  post(reply: Reply): void;
  /** Goes on after the orders that have come meanwhile were taken. */
  later(next: () => void): void;
}

interface Job {
  readonly id: number;
  readonly stages: Stages<ResultOf<TaskKind>>;
}

/** Takes orders. */
export function solvingThread({ post, later }: Platform, desk = new Desk()): (order: Order) => void {
  /** The newest last. */
  const jobs: Job[] = [];
  let stepping = false;

  function step(): void {
    const job = jobs.at(-1);
    stepping = job !== undefined;
    if (job === undefined) return;
    const reply = afterStage(job);
    if (reply !== null) {
      jobs.splice(jobs.indexOf(job), 1);
      post(reply);
    }
    later(step);
  }

  return (order) => {
    if (order.kind === 'keep') return desk.keep(order.keys);
    const at = jobs.findIndex(({ id }) => id === order.id);
    if (order.kind === 'task') jobs.push({ id: order.id, stages: carryOut(order.task, desk) });
    else if (at >= 0) {
      jobs.splice(at, 1);
      post({ kind: 'stopped', id: order.id });
    }
    if (!stepping) step();
  };
}

/** One stage further; null where the job is not at its end. */
function afterStage({ id, stages }: Job): Reply | null {
  try {
    const stage = stages.next();
    if (stage.done !== true) return null;
    return { kind: 'done', id, result: stage.value, bytes: plainBytes(stage.value) };
  } catch (error) {
    return { kind: 'failed', id, detail: error instanceof Error ? error.message : String(error) };
  }
}
