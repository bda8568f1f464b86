/** Asks one question at a time; of those that come meanwhile the newest alone is asked next. */
export class Newest<Q> {
  private readonly send: (ask: number, question: Q) => void;
  private underWay: number | null = null;
  private waiting: { readonly question: Q } | null = null;
  private wanted = false;
  private count = 0;

  /** Every question that is sent must be answered, be it by a refusal. */
  constructor(send: (ask: number, question: Q) => void) {
    this.send = send;
  }

  ask(question: Q): void {
    if (this.underWay === null) this.next(question);
    else this.waiting = { question };
  }

  /** Takes note of an answer; true where it is the one waited for and still wanted. */
  answered(ask: number): boolean {
    if (ask !== this.underWay) return false;
    const { wanted, waiting } = this;
    this.underWay = null;
    this.waiting = null;
    if (waiting !== null) this.next(waiting.question);
    return wanted;
  }

  /** No answer to anything asked so far is wanted. */
  drop(): void {
    this.waiting = null;
    this.wanted = false;
  }

  private next(question: Q): void {
    this.underWay = ++this.count;
    this.wanted = true;
    this.send(this.underWay, question);
  }
}
