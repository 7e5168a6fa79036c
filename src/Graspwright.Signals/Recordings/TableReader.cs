using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>Reads a recording from a table of text (CSV and its common variants), piece by piece as it comes.</summary>
/// <remarks>
/// Comma, semicolon, tab or space between columns; decimal point, or decimal comma where columns are not parted by commas;
/// header or none; units in brackets; a column of times, or a rate given; a column of gestures, or none; lines that begin
/// with # are passed over. Single lines that cannot be read are left out and counted.
/// </remarks>
/// <param name="hints">What is known beforehand.</param>
public sealed class TableReader(TableHints hints)
{
    private const int Peeked = 8;
    private const double BrokenShare = 0.05;
    private readonly List<byte[]> _first = [];
    private readonly List<Mark> _marks = [];
    private readonly List<byte> _half = [];
    private readonly SampleStore<double> _times = new();
    private SampleStore<float>[] _signals = [];
    private SampleStore<double>? _numbers;
    private int[] _slot = [];
    private double[] _row = [];
    private TableLayout? _layout;
    private byte[] _label = [];
    private int _labelStart, _line, _broken, _firstBroken;
    private string _firstBrokenText = "";

    /// <summary>Takes the next piece.</summary>
    /// <param name="bytes">Bytes of the file, in order; lines may be cut anywhere.</param>
    public void Feed(ReadOnlySpan<byte> bytes)
    {
        while (bytes.Length > 0)
        {
            int end = bytes.IndexOf((byte)'\n');
            if (end < 0)
            {
                _half.AddRange(bytes);
                return;
            }

            if (_half.Count > 0)
            {
                _half.AddRange(bytes[..end]);
                byte[] whole = [.. _half];
                _half.Clear();
                Line(whole);
            }
            else
            {
                Line(bytes[..end]);
            }

            bytes = bytes[(end + 1)..];
        }
    }

    /// <summary>The recording, once everything was fed.</summary>
    /// <exception cref="RecordingException">It cannot be used.</exception>
    public Recording Finish()
    {
        if (_half.Count > 0)
        {
            byte[] last = [.. _half];
            _half.Clear();
            Line(last);
        }

        Settle();
        if (_layout is null || _signals.Length == 0 || _signals[0].Count < 2 && _broken <= 2)
        {
            throw new RecordingException(0, 0, "", "no samples", "a header and a line per sample", "check that this is the recording, and that it was not cut short");
        }

        int lines = _signals[0].Count + _broken;
        if (_broken > 2 && _broken > BrokenShare * lines)
        {
            throw new RecordingException(_firstBroken, 0, "", $"{_broken} of {lines} lines cannot be read, the first is '{_firstBrokenText}'",
                $"{_layout.Uses.Count} columns of numbers a line", "check the speed of the line and its plug: this looks like noise between the samples");
        }

        EndLabel(_signals[0].Count);
        return Timing.Place(this, hints);
    }

    internal TableLayout Layout => _layout!;

    internal SampleStore<double> Times => _times;

    internal SampleStore<double>? Numbers => _numbers;

    internal IReadOnlyList<Mark> MarksInSamples => _marks;

    internal int Broken => _broken;

    internal int Count => _signals[0].Count;

    internal float[][] TakeSignals() => [.. _signals.Select(s => s.Take())];

    private void Line(ReadOnlySpan<byte> line)
    {
        _line++;
        if (_line == 1 && line.StartsWith("\uFEFF"u8))
        {
            line = line[3..];
        }

        if (line.Length > 0 && line[^1] == (byte)'\r')
        {
            line = line[..^1];
        }

        if (line.Length == 0 || line[0] == (byte)'#')
        {
            return;
        }

        if (_layout is null)
        {
            _first.Add(line.ToArray());
            if (_first.Count == Peeked)
            {
                Settle();
            }

            return;
        }

        Sample(line);
    }

    private void Settle()
    {
        if (_layout is not null || _first.Count == 0)
        {
            return;
        }

        _layout = TableLayout.Of(_first, hints);
        _slot = new int[_layout.Uses.Count];
        _row = new double[_slot.Length];
        int signals = 0;
        for (int i = 0; i < _slot.Length; i++)
        {
            _slot[i] = _layout.Uses[i] == ColumnUse.Signal ? signals++ : -1;
        }

        if (signals == 0)
        {
            throw new RecordingException(1, 0, "header", "no column of a signal", "time_s, then a column for each channel", "check the header line");
        }

        _signals = [.. Enumerable.Range(0, signals).Select(_ => new SampleStore<float>())];
        _numbers = _layout.Find(ColumnUse.Number) >= 0 ? new() : null;
        _line -= _first.Count;
        for (int i = 0; i < _first.Count; i++)
        {
            _line++;
            if (i > 0 || !_layout.HasHeader)
            {
                Sample(_first[i]);
            }
        }
    }

    private void Sample(ReadOnlySpan<byte> line)
    {
        TableLayout layout = _layout!;
        ReadOnlySpan<byte> rest = line, label = default;
        bool hasLabel = false;
        for (int c = 0; c < _slot.Length; c++)
        {
            int end = c == _slot.Length - 1 ? rest.Length : rest.IndexOf(layout.Separator);
            if (end < 0)
            {
                BrokenLine(line);
                return;
            }

            ReadOnlySpan<byte> field = rest[..end];
            rest = c == _slot.Length - 1 ? default : rest[(end + 1)..];
            if (layout.Uses[c] == ColumnUse.Label)
            {
                label = field;
                hasLabel = true;
            }
            else if (!NumberText.TryRead(field, layout.Mark, out _row[c]))
            {
                BrokenLine(line);
                return;
            }
        }

        Keep(layout);
        if (hasLabel && !label.SequenceEqual(_label))
        {
            EndLabel(_signals[0].Count - 1);
            _label = label.ToArray();
            _labelStart = _signals[0].Count - 1;
        }
    }

    private void Keep(TableLayout layout)
    {
        for (int c = 0; c < _slot.Length; c++)
        {
            switch (layout.Uses[c])
            {
                case ColumnUse.Time:
                    _times.Add(_row[c]);
                    break;
                case ColumnUse.Number:
                    _numbers!.Add(_row[c]);
                    break;
                case ColumnUse.Signal:
                    SampleStore<float> store = _signals[_slot[c]];
                    store.Add(double.IsNaN(_row[c]) ? store.Last : (float)_row[c]);
                    break;
            }
        }
    }

    private void BrokenLine(ReadOnlySpan<byte> line)
    {
        _broken++;
        if (_broken == 1)
        {
            _firstBroken = _line;
            string text = Encoding.UTF8.GetString(line[..Math.Min(line.Length, 40)]);
            _firstBrokenText = new([.. text.Select(c => char.IsControl(c) ? '·' : c)]);
        }
    }

    private void EndLabel(int end)
    {
        string label = Encoding.UTF8.GetString(_label).Trim().Trim('"');
        if (label.Length > 0 && end > _labelStart)
        {
            _marks.Add(new(_labelStart, end, label));
        }
    }
}
