/* global AudioWorkletProcessor, currentTime, registerProcessor, sampleRate */

/** Samples to a piece: about 12 ms, so that the page is not woken too often. */
const PIECE_SAMPLES = 512;

/** Sends what comes in as pieces of one channel, each with the context's time of its first sample. */
class Capture extends AudioWorkletProcessor {
  piece = new Float32Array(PIECE_SAMPLES);
  filled = 0;

  process([channels]) {
    const samples = channels?.[0];
    // Nothing comes in while the device is being opened.
    if (samples) this.take(samples);
    return true;
  }

  take(samples) {
    this.piece.set(samples, this.filled);
    this.filled += samples.length;
    if (this.filled < PIECE_SAMPLES) return;
    const atSec = currentTime - (PIECE_SAMPLES - samples.length) / sampleRate;
    this.port.postMessage({ samples: this.piece, atSec }, [this.piece.buffer]);
    this.piece = new Float32Array(PIECE_SAMPLES);
    this.filled = 0;
  }
}

registerProcessor('capture', Capture);
