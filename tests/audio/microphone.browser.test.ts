import { afterEach, expect, it, vi } from 'vitest';
import { openMicrophone } from '../../src/audio/microphone.ts';
import { valueOf } from '../support/music.ts';

afterEach(() => vi.restoreAllMocks());

const ROOM = { context: {} as AudioContext };

it.each([
  ['NotAllowedError', { kind: 'denied' }],
  ['NotFoundError', { kind: 'no-device' }],
  ['NotReadableError', { kind: 'refused', text: 'NotReadableError: why' }],
])('a microphone refused with %s is the error %j', async (name, error) => {
  vi.spyOn(navigator.mediaDevices, 'getUserMedia').mockRejectedValue(new DOMException('why', name));
  expect(await openMicrophone(ROOM)).toEqual({ ok: false, error });
});

it('asks for the raw sound: nothing that a call would want changes its attacks', async () => {
  const ask = vi
    .spyOn(navigator.mediaDevices, 'getUserMedia')
    .mockRejectedValue(new DOMException('', 'NotFoundError'));
  await openMicrophone(ROOM);
  expect(ask.mock.calls[0]?.[0]?.audio).toMatchObject({
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
  });
});

it('tells when the device is taken away', async () => {
  const context = new AudioContext();
  const { stream } = new MediaStreamAudioDestinationNode(context);
  vi.spyOn(navigator.mediaDevices, 'getUserMedia').mockResolvedValue(stream);
  const microphone = valueOf(await openMicrophone({ context }));
  const lost = vi.fn();
  const stop = microphone.onLost(lost);
  stream.getAudioTracks()[0]?.dispatchEvent(new Event('ended'));
  expect(lost).toHaveBeenCalledOnce();
  stop();
  microphone.close();
  await context.close();
});
