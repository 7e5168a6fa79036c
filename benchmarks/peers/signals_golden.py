"""Prints what SciPy makes of a known signal, for the tests of Graspwright.Signals.

    /usr/bin/python3 benchmarks/peers/signals_golden.py > tests/Graspwright.Signals.Tests/Filters/Files/scipy.json

The signal is made from integers by a rule that any language can repeat exactly.
"""
import json
import numpy as np
import scipy
from scipy import signal


def known(n):
    state, out = 12345, []
    for _ in range(n):
        state = (1103515245 * state + 12345) % 2147483648
        out.append((state // 65536 % 2001 - 1000) / 1000.0)
    return np.array(out)


x = known(1024)
cases = {}
for name, args in {
    "band 4": (4, [20, 450], "bandpass"),
    "band 2": (2, [20, 450], "bandpass"),
    "band 3": (3, [35.5, 120], "bandpass"),
    "high 4": (4, 20, "highpass"),
    "high 3": (3, 20, "highpass"),
    "low 2": (2, 6, "lowpass"),
    "low 5": (5, 100, "lowpass"),
    "low 1": (1, 6, "lowpass"),
}.items():
    sos = signal.butter(args[0], args[1], args[2], fs=1000, output="sos")
    cases[name] = {
        "order": args[0], "edges": np.atleast_1d(args[1]).tolist(), "kind": args[2],
        "causal": signal.sosfilt(sos, x)[:200].tolist(),
        "zero_phase": signal.sosfiltfilt(sos, x)[::4].tolist(),
    }
b, a = signal.iirnotch(50, 30, fs=1000)
frequency, density = signal.welch(x, 1000, nperseg=256)
print(json.dumps({
    "scipy": scipy.__version__, "numpy": np.__version__,
    "filters": cases,
    "notch": {"b": b.tolist(), "a": a.tolist(), "causal": signal.lfilter(b, a, x)[:200].tolist()},
    "welch": density.tolist(),
    "rms": float(np.sqrt(np.mean(x ** 2))), "mav": float(np.mean(np.abs(x))), "waveform_length": float(np.sum(np.abs(np.diff(x)))),
}))
