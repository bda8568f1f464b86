/** Forms that a message may have. A form gives the value back, or null for what is not of the form; keys that it does not name are dropped. */

/** Never itself null: a value that may be null is wrapped by `orNull`. */
export interface Form<T> {
  read(value: unknown): { readonly value: T } | null;
}

type Read<F> = F extends Form<infer T> ? T : never;

const form = <T>(is: (value: unknown) => value is T): Form<T> => ({
  read: (value) => (is(value) ? { value } : null),
});

export const anyText = form((value): value is string => typeof value === 'string');
export const truth = form((value): value is boolean => typeof value === 'boolean');
/** A finite one. */
export const number = form((value): value is number => Number.isFinite(value));
export const word = <W extends string>(one: W): Form<W> => form((value): value is W => value === one);

export function orNull<T>(inner: Form<T>): Form<T | null> {
  return { read: (value) => (value === null ? { value } : inner.read(value)) };
}

export function listOf<T>(inner: Form<T>): Form<readonly T[]> {
  return {
    read(value) {
      if (!Array.isArray(value)) return null;
      const read = value.map((one: unknown) => inner.read(one));
      const items = read.filter((one) => one !== null);
      return items.length === read.length ? { value: items.map((one) => one.value) } : null;
    },
  };
}

export const pair: Form<readonly [number, number]> = {
  read(value) {
    const [x, y] = listOf(number).read(value)?.value ?? [];
    return x === undefined || y === undefined ? null : { value: [x, y] };
  },
};

export function fields<F extends Readonly<Record<string, Form<unknown>>>>(
  forms: F,
): Form<{ readonly [K in keyof F]: Read<F[K]> }> {
  return {
    read(value) {
      if (typeof value !== 'object' || value === null) return null;
      const read: Record<string, unknown> = {};
      for (const [key, one] of Object.entries(forms)) {
        const found = one.read(Reflect.get(value, key));
        if (found === null) return null;
        read[key] = found.value;
      }
      // Every key has been read by its own form.
      return { value: read as { readonly [K in keyof F]: Read<F[K]> } };
    },
  };
}

/** The first form that fits. */
export function either<T>(...forms: readonly Form<T>[]): Form<T> {
  return {
    read(value) {
      for (const one of forms) {
        const found = one.read(value);
        if (found !== null) return found;
      }
      return null;
    },
  };
}
