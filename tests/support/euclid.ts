/**
 * So many attacks (`x`) spread as evenly as can be over so many steps, by the procedure of
 * Bjorklund as Toussaint 2005 describes it: the shorter row of remainders is laid over the
 * sequences until at most one kind of remainder is left.
 */
export function euclideanRhythm(attacks: number, steps: number): string {
  let heads = Array.from({ length: attacks }, () => 'x');
  let tails = Array.from({ length: steps - attacks }, () => '.');
  while (tails.length > 1) {
    const pairs = Math.min(heads.length, tails.length);
    const joined = heads.slice(0, pairs).map((head, i) => head + tails[i]!);
    tails = heads.length > pairs ? heads.slice(pairs) : tails.slice(pairs);
    heads = joined;
  }
  return [...heads, ...tails].join('');
}
