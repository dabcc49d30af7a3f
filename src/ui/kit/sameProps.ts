function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => Object.is(item, b[i]));
}

/**
 * Whether two sets of a component's props draw the same: each prop is the very same as before, or a
 * list of the very same items, as the part of a hand is that lies in one system.
 */
export function sameProps<Props extends object>(before: Props, after: Props): boolean {
  const names = Object.keys(after) as (keyof Props)[];
  return (
    names.length === Object.keys(before).length &&
    names.every((name) => {
      const [a, b] = [before[name], after[name]];
      return Object.is(a, b) || (Array.isArray(a) && Array.isArray(b) && sameItems(a, b));
    })
  );
}
