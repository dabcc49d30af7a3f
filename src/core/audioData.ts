/** Sampled sound: one array of linear samples in −1…1 per channel, all of one length; rate in Hz. */
export type AudioData = {
  readonly channels: readonly Float32Array[];
  readonly sampleRate: number;
};
