import { binsOf, type Framing, frameCount, frameRate, visitFrames } from './spectrogram.ts';

/** Which bands a filter bank has: triangles on a logarithmic axis of frequency, overlapping by half. */
export type BandRange = {
  readonly lowestHz: number;
  readonly highestHz: number;
  readonly bandsPerOctave: number;
};

/** Quarter tones over all that is listened to (Böck and Widmer 2013). */
export const QUARTER_TONES: BandRange = { lowestHz: 30, highestHz: 11000, bandsPerOctave: 24 };

export type FilterBank = {
  /** The middles of the bands, ascending. */
  readonly centresHz: Float64Array;
  /** Writes the magnitude of each band into `out`: weighted sums of the bins. */
  readonly apply: (magnitudes: Float32Array, out: Float32Array) => void;
};

/** The bins under a band and their weights. */
type Band = {
  readonly centreHz: number;
  readonly firstBin: number;
  readonly weights: Float32Array;
};

/**
 * A bank of triangular filters over the bins of a spectrum. Where bands are narrower than a bin,
 * neighbours that would see the same bin are one (Böck and Widmer 2013), so low bands stand further
 * apart than `bandsPerOctave` says. A triangle is 1 at its middle; it is not made equal in area.
 */
export function createFilterBank(framing: Framing, range: BandRange): FilterBank {
  const bands = bandsOver(framing, range);
  return {
    centresHz: Float64Array.from(bands, ({ centreHz }) => centreHz),
    apply: (magnitudes, out) => {
      for (let b = 0; b < bands.length; b++) {
        const { firstBin, weights } = bands[b]!;
        let sum = 0;
        for (let i = 0; i < weights.length; i++) sum += weights[i]! * magnitudes[firstBin + i]!;
        out[b] = sum;
      }
    },
  };
}

function bandsOver(framing: Framing, { lowestHz, highestHz, bandsPerOctave }: BandRange): Band[] {
  const { binHz, binCount } = binsOf(framing);
  const count = Math.floor(bandsPerOctave * Math.log2(highestHz / lowestHz)) + 1;
  const bins = Array.from({ length: count }, (_, i) =>
    Math.round((lowestHz * 2 ** (i / bandsPerOctave)) / binHz),
  );
  const places = [...new Set(bins)].filter((bin) => bin > 0 && bin < binCount);
  return places
    .slice(1, -1)
    .map((middle, i) => triangle(places[i]!, middle, places[i + 2]!, binHz));
}

function triangle(left: number, middle: number, right: number, binHz: number): Band {
  const firstBin = left + 1;
  const weights = Float32Array.from({ length: right - firstBin }, (_, i) => {
    const bin = firstBin + i;
    return bin <= middle ? (bin - left) / (middle - left) : (right - bin) / (right - middle);
  });
  return { centreHz: middle * binHz, firstBin, weights };
}

/** A sound through a filter bank: `frameCount` × `bandCount` levels, frame after frame. */
export type BandFrames = {
  readonly frameRate: number;
  readonly frameCount: number;
  readonly bandCount: number;
  readonly centresHz: Float64Array;
  readonly levels: Float32Array;
};

/** What is 20 dB under amplitude 1 lies at the bend between linear and logarithmic (from methods of onset detection, Böck and Widmer 2013: 1 to 20). */
const COMPRESSION = 10;

/**
 * The levels of a sound in bands: natural log of 1 + `COMPRESSION` × magnitude × `gain`. A sine of
 * amplitude 1 has magnitude 1 (see `createSpectrum`). 0 where there is nothing.
 */
export function bandFrames(
  samples: Float32Array,
  framing: Framing,
  { range = QUARTER_TONES, gain = 1 }: { readonly range?: BandRange; readonly gain?: number } = {},
): BandFrames {
  const bank = createFilterBank(framing, range);
  const bandCount = bank.centresHz.length;
  const frames = frameCount(samples.length, framing);
  const levels = new Float32Array(frames * bandCount);
  const scale = COMPRESSION * gain;
  visitFrames(samples, framing, (frame, magnitudes) => {
    const row = levels.subarray(frame * bandCount, (frame + 1) * bandCount);
    bank.apply(magnitudes, row);
    for (let b = 0; b < bandCount; b++) row[b] = Math.log1p(scale * row[b]!);
  });
  return {
    frameRate: frameRate(framing),
    frameCount: frames,
    bandCount,
    centresHz: bank.centresHz,
    levels,
  };
}
