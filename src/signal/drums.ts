import { firstSight, standardised } from './drumFirstSight.ts';
import { DRUM_MODEL } from './drumModel.ts';
import { secondSight } from './drumSecondSight.ts';
import type { DrumPiece, RecordedDrumHit } from './heardRecording.ts';
import type { Strike } from './strikeLooks.ts';
import { quantile } from './strikes.ts';
import { STRUCK_BANDS } from './struckBands.ts';

/** In the order of the model's coefficients. */
const PIECES: readonly DrumPiece[] = ['kick', 'snare', 'hat'];

/** The bands whose rise tells how strongly each piece is struck. */
const STRENGTH_BANDS: Readonly<Record<DrumPiece, readonly [number, number]>> = {
  kick: [0, 4],
  snare: [3, 13],
  hat: [12, 16],
};

/** A piece is heard at all where so many of its hits, and this share of them, are at least so likely. */
const SURE = { probability: 0.55, hits: 3, share: 0.08 } as const;

/** The strong hit that others are measured by: 1 in 50 of its piece is stronger. */
const STRONG_HITS = 0.98;

/**
 * Kick, snare and hi-hat or cymbal in a recording, with how strong and how likely each hit is. Every
 * attack is seen twice: by itself (`firstSight`), then against the whole recording (`secondSight`).
 * A piece of which hardly a hit
 * is likely is left out wholly, since noise looks a little like cymbals throughout. A silent recording
 * has no strikes and no hits.
 */
export function findDrumHits(strikes: readonly Strike[]): RecordedDrumHit[] {
  const attacks = strikes.map(({ sec, look }) => {
    const standard = standardised(look);
    return { sec, rises: look, look: standard, odds: firstSight(standard) };
  });
  const likelihoods = secondSight(attacks);
  return PIECES.flatMap((piece, p) => {
    const hits = attacks.flatMap(({ sec, rises }, i) => {
      const probability = likelihoods[i]![p]!;
      return probability < DRUM_MODEL.taken[p]!
        ? []
        : [{ sec, piece, strength: riseIn(rises, STRENGTH_BANDS[piece]), probability }];
    });
    const sure = hits.filter((hit) => hit.probability >= SURE.probability).length;
    if (sure < Math.max(SURE.hits, SURE.share * hits.length)) return [];
    const strong = quantile(
      hits.map((hit) => hit.strength),
      STRONG_HITS,
    );
    return hits.map((hit) => ({
      ...hit,
      strength: strong > 0 ? Math.min(1, hit.strength / strong) : 0,
    }));
  }).toSorted((a, b) => a.sec - b.sec);
}

/** The first `STRUCK_BANDS` numbers of a look are the rises of the bands. */
function riseIn(rises: Float32Array, [from, to]: readonly [number, number]): number {
  let sum = 0;
  for (let band = from; band < Math.min(to, STRUCK_BANDS); band++) sum += rises[band]!;
  return sum / (to - from);
}
