"""A sound to train by as a WAV file: sine tones of our own, so soft at their edges that nothing clicks."""

import io
import wave
from typing import TYPE_CHECKING

from core.beat import Pattern, Tone, cues, length_s

if TYPE_CHECKING:
    import numpy

RATE = 8000  # samples a second: enough for tones below 4 kHz, and a session is 3 MB
HALF = 128  # silence in a WAV file of one byte a sample
LOUD = 110  # of 127
EDGE_S = 0.008  # a tone rises and falls so long
# Pitch (Hz) and length (s) of each tone; up is higher than down, and a rest is the longest. Own choice.
TONES = {
    Tone.UP: (880, 0.09),
    Tone.DOWN: (587, 0.09),
    Tone.SOON: (1175, 0.15),
    Tone.REST: (440, 0.8),
    Tone.SIDE: (1175, 0.3),
    Tone.OVER: (440, 1.8),
}


def beat(pattern: Pattern) -> bytes:
    """The file: one channel, 8 bit."""
    import numpy

    samples = numpy.full(round(length_s(pattern) * RATE), HALF, dtype=numpy.uint8)
    drawn = {tone: _tone(*TONES[tone]) for tone in Tone}
    for cue in cues(pattern):
        begin, tone = round(cue.at * RATE), drawn[cue.tone]
        samples[begin : begin + len(tone)] = tone
    out = io.BytesIO()
    with wave.open(out, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(1)
        file.setframerate(RATE)
        file.writeframes(samples.tobytes())
    return out.getvalue()


def _tone(hertz: int, seconds: float) -> "numpy.ndarray[tuple[int], numpy.dtype[numpy.uint8]]":
    import numpy

    at = numpy.arange(round(seconds * RATE)) / RATE
    edge = numpy.minimum(1, numpy.minimum(at, seconds - at) / EDGE_S)
    wave_form = numpy.sin(2 * numpy.pi * hertz * at) * edge * LOUD
    rounded: numpy.ndarray[tuple[int], numpy.dtype[numpy.uint8]] = (HALF + wave_form.round()).astype("uint8")
    return rounded
