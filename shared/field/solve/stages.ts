/** Long work in stages: it rests between them, so that whoever steps it may stop it there or see to something else first. */

/** Yields at each rest, returns what the work comes to. */
export type Stages<T, Rest = void> = Generator<Rest, T, void>;

/** What the work comes to, without a rest. */
export function drained<T>(stages: Stages<T, unknown>): T {
  for (;;) {
    const step = stages.next();
    if (step.done === true) return step.value;
  }
}
