import type { KeyNumber } from '../../core/harmony/pitch.ts';
import type { DrumSound, DrumTone } from './drumSound.ts';

/** A drum that can be struck: the General MIDI keys that strike it, its peak (0 to 1) beside the others, its sound. */
export type KitDrum = {
  readonly name: string;
  readonly keys: readonly KeyNumber[];
  readonly peak: number;
  readonly sound: DrumSound;
};

function skin(toHz: number, fallSec: number, level = 1): readonly DrumTone[] {
  return [{ fromHz: 1.6 * toHz, toHz, glideSec: 0.025, fallSec, level }];
}

function tom(toHz: number): DrumSound {
  return {
    lengthSec: 0.8,
    tones: skin(toHz, 0.18),
    noises: [{ lowHz: 200, highHz: 4000, fallSec: 0.015, level: 0.25 }],
  };
}

function handDrum(toHz: number, fallSec: number): DrumSound {
  return {
    lengthSec: Math.max(0.3, 6 * fallSec),
    tones: skin(toHz, fallSec),
    noises: [{ lowHz: 800, highHz: 6000, fallSec: 0.006, level: 0.3 }],
  };
}

function hat(fallSec: number, lengthSec: number): DrumSound {
  return {
    lengthSec,
    metals: [{ baseHz: 417, lowHz: 7000, fallSec, level: 1 }],
    noises: [{ lowHz: 6500, highHz: 16000, fallSec, level: 0.35 }],
  };
}

function cymbal(baseHz: number, lowHz: number, fallSec: number): DrumSound {
  return {
    lengthSec: 2.4,
    metals: [{ baseHz, lowHz, fallSec, level: 1 }],
    noises: [
      { lowHz: lowHz - 500, highHz: 15000, fallSec: fallSec * 0.8, level: 0.5 },
      { lowHz: 2500, highHz: 9000, fallSec: 0.02, level: 0.4 },
    ],
  };
}

function bars(hz: number, other: number, fallSec: number): DrumSound {
  return {
    lengthSec: Math.min(2, 7 * fallSec),
    tones: [
      { fromHz: hz, toHz: hz, glideSec: 1, fallSec, level: 1 },
      { fromHz: hz * other, toHz: hz * other, glideSec: 1, fallSec: fallSec / 2, level: 0.4 },
    ],
  };
}

function shaken(lowHz: number, fallSec: number, strokesAtSec: readonly number[] = [0]): DrumSound {
  return {
    lengthSec: (strokesAtSec.at(-1) ?? 0) + 8 * fallSec,
    noises: [{ lowHz, highHz: 14000, fallSec, level: 1, strokesAtSec }],
  };
}

/**
 * The kit by General MIDI's percussion keys 35 to 81 (reference [M21], citing GM Level 1), with the edge
 * hats 22 and 26 of electronic kits (common practice). The first drum, a dull stroke, also stands
 * in for any other key. Frequencies and lengths are chosen to be told apart; no instrument is copied.
 */
export const KIT: readonly KitDrum[] = [
  {
    name: 'low conga',
    keys: [64],
    peak: 0.3,
    sound: handDrum(165, 0.11),
  },
  {
    name: 'kick',
    keys: [35, 36],
    peak: 0.35,
    sound: {
      lengthSec: 0.6,
      tones: [{ fromHz: 190, toHz: 52, glideSec: 0.022, fallSec: 0.13, level: 1 }],
      noises: [{ lowHz: 1200, highHz: 6000, fallSec: 0.004, level: 0.3 }],
    },
  },
  {
    name: 'snare',
    keys: [38, 40],
    peak: 0.3,
    sound: {
      lengthSec: 0.5,
      tones: [
        { fromHz: 260, toHz: 185, glideSec: 0.015, fallSec: 0.07, level: 0.6 },
        { fromHz: 410, toHz: 330, glideSec: 0.01, fallSec: 0.04, level: 0.35 },
      ],
      noises: [{ lowHz: 1300, highHz: 11000, fallSec: 0.085, level: 1.6 }],
    },
  },
  {
    name: 'side stick',
    keys: [37],
    peak: 0.3,
    sound: {
      lengthSec: 0.15,
      tones: [{ fromHz: 1750, toHz: 1650, glideSec: 0.01, fallSec: 0.012, level: 1 }],
      noises: [{ lowHz: 500, highHz: 5000, fallSec: 0.01, level: 0.6 }],
    },
  },
  {
    name: 'hand clap',
    keys: [39],
    peak: 0.35,
    sound: {
      lengthSec: 0.5,
      noises: [
        { lowHz: 900, highHz: 4500, fallSec: 0.012, level: 1, strokesAtSec: [0, 0.011, 0.022] },
        { lowHz: 900, highHz: 4500, fallSec: 0.09, level: 0.35 },
      ],
    },
  },
  { name: 'closed hi-hat', keys: [22, 42], peak: 0.21, sound: hat(0.03, 0.25) },
  { name: 'pedal hi-hat', keys: [44], peak: 0.16, sound: hat(0.022, 0.2) },
  { name: 'open hi-hat', keys: [26, 46], peak: 0.21, sound: hat(0.28, 1.6) },
  { name: 'low floor tom', keys: [41], peak: 0.28, sound: tom(78) },
  { name: 'high floor tom', keys: [43], peak: 0.28, sound: tom(95) },
  { name: 'low tom', keys: [45], peak: 0.28, sound: tom(118) },
  { name: 'low-mid tom', keys: [47], peak: 0.28, sound: tom(140) },
  { name: 'hi-mid tom', keys: [48], peak: 0.28, sound: tom(165) },
  { name: 'high tom', keys: [50], peak: 0.28, sound: tom(195) },
  { name: 'crash', keys: [49, 57], peak: 0.22, sound: cymbal(341, 4200, 0.6) },
  { name: 'splash', keys: [55], peak: 0.2, sound: cymbal(476, 5200, 0.22) },
  { name: 'chinese cymbal', keys: [52], peak: 0.2, sound: cymbal(263, 3000, 0.4) },
  { name: 'ride', keys: [51, 59], peak: 0.2, sound: cymbal(523, 6000, 0.5) },
  {
    name: 'ride bell',
    keys: [53],
    peak: 0.2,
    sound: { ...bars(1850, 1.47, 0.3), metals: cymbal(523, 6500, 0.4).metals ?? [] },
  },
  { name: 'tambourine', keys: [54], peak: 0.2, sound: shaken(7000, 0.05, [0, 0.02]) },
  { name: 'cowbell', keys: [56], peak: 0.25, sound: bars(560, 1.51, 0.09) },
  {
    name: 'vibraslap',
    keys: [58],
    peak: 0.2,
    sound: shaken(
      2500,
      0.02,
      Array.from({ length: 18 }, (_, i) => 0.035 * i),
    ),
  },
  { name: 'hi bongo', keys: [60], peak: 0.3, sound: handDrum(420, 0.06) },
  { name: 'low bongo', keys: [61], peak: 0.3, sound: handDrum(310, 0.07) },
  { name: 'mute hi conga', keys: [62], peak: 0.3, sound: handDrum(240, 0.03) },
  { name: 'open hi conga', keys: [63], peak: 0.3, sound: handDrum(215, 0.11) },
  { name: 'high timbale', keys: [65], peak: 0.3, sound: handDrum(520, 0.1) },
  { name: 'low timbale', keys: [66], peak: 0.3, sound: handDrum(390, 0.12) },
  { name: 'high agogo', keys: [67], peak: 0.22, sound: bars(1180, 1.42, 0.11) },
  { name: 'low agogo', keys: [68], peak: 0.22, sound: bars(790, 1.42, 0.12) },
  { name: 'cabasa', keys: [69], peak: 0.18, sound: shaken(6000, 0.035) },
  { name: 'maracas', keys: [70], peak: 0.18, sound: shaken(5000, 0.02) },
  { name: 'short whistle', keys: [71], peak: 0.15, sound: bars(2300, 1.02, 0.08) },
  { name: 'long whistle', keys: [72], peak: 0.15, sound: bars(2300, 1.02, 0.2) },
  {
    name: 'short guiro',
    keys: [73],
    peak: 0.2,
    sound: shaken(2800, 0.008, [0, 0.02, 0.04, 0.06]),
  },
  {
    name: 'long guiro',
    keys: [74],
    peak: 0.2,
    sound: shaken(
      2800,
      0.012,
      Array.from({ length: 12 }, (_, i) => 0.025 * i),
    ),
  },
  { name: 'claves', keys: [75], peak: 0.28, sound: bars(2500, 2.1, 0.02) },
  { name: 'hi wood block', keys: [76], peak: 0.28, sound: bars(1250, 1.6, 0.022) },
  { name: 'low wood block', keys: [77], peak: 0.28, sound: bars(880, 1.6, 0.028) },
  { name: 'mute cuica', keys: [78], peak: 0.2, sound: handDrum(520, 0.04) },
  { name: 'open cuica', keys: [79], peak: 0.2, sound: handDrum(640, 0.12) },
  { name: 'mute triangle', keys: [80], peak: 0.15, sound: bars(4700, 1.53, 0.03) },
  { name: 'open triangle', keys: [81], peak: 0.15, sound: bars(4700, 1.53, 0.5) },
];
