using System.Globalization;
using System.Text;
using Graspwright.Signals.Recordings;

namespace Graspwright.Workshop.Signals;

/// <summary>Writes samples from a line as a recording that can be read again: times, channels, gestures.</summary>
internal sealed class RecordWriter
{
    private const int BytesOfANumber = 32, BytesOfALabel = 256;
    private readonly Stream _file;
    private readonly SampleClock _clock;
    private readonly bool _labelled;
    private readonly int _channels;
    private readonly byte[] _line;
    private readonly List<(long Number, string Label)> _held = [];
    private readonly List<double> _values = [];

    public RecordWriter(Stream file, IReadOnlyList<string> channels, bool labelled, SampleClock clock)
    {
        (_file, _clock, _labelled, _channels) = (file, clock, labelled, channels.Count);
        _line = new byte[BytesOfANumber * (channels.Count + 1) + BytesOfALabel];
        _file.Write(Encoding.UTF8.GetBytes($"time_s,{string.Join(",", channels.Select(c => $"{c} [counts]"))}{(labelled ? ",gesture" : "")}\n"));
    }

    /// <summary>Takes a sample; it is written once the piece that it came in is known.</summary>
    public void Hold(long number, ReadOnlySpan<double> values, string label)
    {
        _held.Add((number, label));
        _values.AddRange(values);
    }

    /// <summary>Writes what is held.</summary>
    public void Write()
    {
        for (int i = 0; i < _held.Count; i++)
        {
            int at = 0;
            Put(_clock.Time(_held[i].Number), "F6", ref at);
            for (int c = 0; c < _channels; c++)
            {
                _line[at++] = (byte)',';
                Put(_values[_channels * i + c], default, ref at);
            }

            if (_labelled)
            {
                _line[at++] = (byte)',';
                Encoding.UTF8.GetEncoder().Convert(_held[i].Label, _line.AsSpan(at, BytesOfALabel - 1), flush: true, out _, out int bytes, out _);
                at += bytes;
            }

            _line[at++] = (byte)'\n';
            _file.Write(_line.AsSpan(0, at));
        }

        _held.Clear();
        _values.Clear();
    }

    /// <summary>Writes what is held, and a line that says how well the times are known.</summary>
    public void End(long lost)
    {
        Write();
        string clock = double.IsFinite(_clock.JitterSeconds)
            ? string.Create(CultureInfo.InvariantCulture, $"times by the receiver's clock, smoothed: {_clock.MeasuredHertz:0.###} samples a second, arrivals within {1e3 * _clock.JitterSeconds:0.###} ms (standard deviation)")
            : "times by the stated rate";
        _file.Write(Encoding.UTF8.GetBytes($"# {clock}; {lost} samples lost; {_clock.Pauses} pauses\n"));
    }

    private void Put(double value, ReadOnlySpan<char> format, ref int at)
    {
        value.TryFormat(_line.AsSpan(at, BytesOfANumber), out int written, format, CultureInfo.InvariantCulture);
        at += written;
    }
}
