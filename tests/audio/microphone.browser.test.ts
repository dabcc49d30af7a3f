import { afterEach, expect, it, vi } from 'vitest';
import { openMicrophone } from '../../src/audio/microphone.ts';

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
