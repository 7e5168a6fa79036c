namespace Graspwright.Signals.Recordings;

/// <summary>Takes one sample.</summary>
/// <param name="values">A value per channel, valid during the call.</param>
public delegate void SampleAction(ReadOnlySpan<double> values);

/// <summary>Samples from a line: a line of text per sample, whole numbers or decimals parted by commas, tabs, semicolons or spaces.</summary>
/// <remarks>
/// Bytes may come in any pieces. Lines that do not hold as many numbers as there are channels are counted, not used.
/// Where the first column counts up (0 … 255 or further, round again), lost samples are counted exactly.
/// Never allocates for a line that is sound.
/// </remarks>
/// <param name="channels">Number of channels.</param>
/// <param name="counted">Whether a running number stands before the channels.</param>
public sealed class LiveLines(int channels, bool counted)
{
    private const int LongestLine = 512;
    private readonly byte[] _half = new byte[LongestLine];
    private readonly double[] _row = new double[channels + (counted ? 1 : 0)];
    private int _used;
    private bool _tooLong, _first = true;
    private double _number = double.NaN;

    /// <summary>Sound samples so far.</summary>
    public long Samples { get; private set; }

    /// <summary>Lines that could not be used.</summary>
    public long Broken { get; private set; }

    /// <summary>Samples that the running number says were lost; 0 where there is none.</summary>
    public long Lost { get; private set; }

    /// <summary>Places where samples were lost.</summary>
    public long Holes { get; private set; }

    /// <summary>Takes the next bytes.</summary>
    /// <param name="bytes">Bytes in order.</param>
    /// <param name="sample">Called for each sound sample with its values; they are valid during the call.</param>
    public void Feed(ReadOnlySpan<byte> bytes, SampleAction sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        while (bytes.Length > 0)
        {
            int end = bytes.IndexOfAny((byte)'\n', (byte)'\r');
            ReadOnlySpan<byte> piece = end < 0 ? bytes : bytes[..end];
            if (_used + piece.Length > LongestLine)
            {
                _tooLong = true;
                _used = 0;
            }
            else if (!_tooLong && (end < 0 || _used > 0))
            {
                piece.CopyTo(_half.AsSpan(_used));
                _used += piece.Length;
            }

            if (end < 0)
            {
                return;
            }

            Line(_used > 0 ? _half.AsSpan(0, _used) : piece, sample);
            (_used, _tooLong) = (0, false);
            bytes = bytes[(end + 1)..];
        }
    }

    private void Line(ReadOnlySpan<byte> line, SampleAction sample)
    {
        line = line.Trim((byte)' ');
        if (line.Length == 0 && !_tooLong)
        {
            return;
        }

        bool sound = !_tooLong && Numbers(line);
        // The line is joined in the middle of a sample: the first piece is not held against it.
        if (!sound)
        {
            Broken += _first ? 0 : 1;
            _first = false;
            return;
        }

        _first = false;
        if (counted)
        {
            Count(_row[0]);
        }

        Samples++;
        sample(_row.AsSpan(counted ? 1 : 0));
    }

    private bool Numbers(ReadOnlySpan<byte> line)
    {
        for (int i = 0; i < _row.Length; i++)
        {
            int end = line.IndexOfAny(",;\t "u8);
            bool last = i == _row.Length - 1;
            if (last != end < 0)
            {
                return false;
            }

            if (!NumberText.TryRead(last ? line : line[..end], (byte)'.', out _row[i]) || double.IsNaN(_row[i]))
            {
                return false;
            }

            line = last ? default : line[(end + 1)..].TrimStart((byte)' ');
        }

        return true;
    }

    private void Count(double number)
    {
        double step = number - _number;
        if (step < 0)
        {
            // Counters of one or two bytes begin again; anything else began again because the board did.
            step += _number < 256 ? 256 : 65536;
        }

        if (step is > 1 and < 65536)
        {
            Lost += (long)step - 1;
            Holes++;
        }

        _number = number;
    }
}
