/* global AudioWorkletProcessor, currentFrame, registerProcessor */

/** Blocks told of at once: a third of a second. */
const BLOCKS = 128;

/** Tells of each block of 128 samples its highest sample and its sharpest edge, and nothing else. */
class OutputTap extends AudioWorkletProcessor {
  peaks = new Float32Array(BLOCKS);
  edges = new Float32Array(BLOCKS);
  filled = 0;
  fromFrame = 0;
  /** The last four samples of each channel. */
  before = [new Float32Array(4), new Float32Array(4)];

  process([channels]) {
    if (this.filled === 0) this.fromFrame = currentFrame;
    let peak = 0;
    let edge = 0;
    channels.forEach((samples, c) => {
      const [a, b, d, e] = this.before[c];
      let [x4, x3, x2, x1] = [a, b, d, e];
      for (const x of samples) {
        peak = Math.max(peak, Math.abs(x));
        // A step of height h makes 3h of the fourth difference; what is smooth makes next to nothing.
        edge = Math.max(edge, Math.abs(x - 4 * x1 + 6 * x2 - 4 * x3 + x4) / 3);
        [x4, x3, x2, x1] = [x3, x2, x1, x];
      }
      this.before[c].set([x4, x3, x2, x1]);
    });
    this.peaks[this.filled] = peak;
    this.edges[this.filled] = edge;
    this.filled++;
    if (this.filled === BLOCKS) this.send();
    return true;
  }

  send() {
    const { fromFrame, peaks, edges } = this;
    this.port.postMessage({ fromFrame, peaks, edges }, {});
    this.peaks = new Float32Array(BLOCKS);
    this.edges = new Float32Array(BLOCKS);
    this.filled = 0;
  }
}

registerProcessor('output-tap', OutputTap);
