import type { AudioData } from '../core/audioData.ts';
import type { Seconds } from '../core/time/ticks.ts';

/** Where a recorded sound is taken to begin: the first sample over this share of its highest. */
export const ATTACK_SHARE = 0.1;

/** Longest fade from the cut to full strength; too short to be heard as anything but an attack. */
export const CUT_FADE_SEC: Seconds = 0.001;

function frameLevel(channels: AudioData['channels'], frame: number): number {
  return Math.max(...channels.map((channel) => Math.abs(channel[frame]!)));
}

/** The highest absolute sample of any channel; 0 for silence. */
export function peakOf(channels: AudioData['channels']): number {
  let peak = 0;
  for (const channel of channels)
    for (const sample of channel) peak = Math.max(peak, Math.abs(sample));
  return peak;
}

/** Root of the mean square of all channels over the first `frames` samples (or all there are). */
export function rmsOf(channels: AudioData['channels'], frames: number): number {
  let sum = 0;
  let count = 0;
  for (const channel of channels) {
    const heard = channel.subarray(0, frames);
    for (const sample of heard) sum += sample * sample;
    count += heard.length;
  }
  return count === 0 ? 0 : Math.sqrt(sum / count);
}

/**
 * The sound without what lies before its attack, so that it is heard from its first sample on: cut
 * where any channel first exceeds `ATTACK_SHARE` of the peak, then faded in over `CUT_FADE_SEC`,
 * the first sample being low but not zero. Silence comes back unchanged.
 */
export function fromAttack(audio: AudioData): AudioData {
  const threshold = ATTACK_SHARE * peakOf(audio.channels);
  const length = audio.channels[0]?.length ?? 0;
  let start = 0;
  while (start < length && frameLevel(audio.channels, start) <= threshold) start++;
  if (start === length) return audio;
  const fade = Math.floor(CUT_FADE_SEC * audio.sampleRate);
  const channels = audio.channels.map((channel) => {
    const heard = channel.slice(start);
    for (let i = 0; i < Math.min(fade, heard.length); i++) heard[i]! *= (i + 1) / (fade + 1);
    return heard;
  });
  return { channels, sampleRate: audio.sampleRate };
}

/** The sound with its last `CUT_FADE_SEC` faded to nothing, so that a cut-off end makes no click. */
export function toSoftEnd(audio: AudioData): AudioData {
  const fade = Math.floor(CUT_FADE_SEC * audio.sampleRate);
  const channels = audio.channels.map((channel) => {
    const heard = channel.slice();
    for (let i = 1; i <= Math.min(fade, heard.length); i++)
      heard[heard.length - i]! *= (i - 1) / fade;
    return heard;
  });
  return { channels, sampleRate: audio.sampleRate };
}
