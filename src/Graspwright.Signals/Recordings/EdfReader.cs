using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>Reads EDF, EDF+ and BDF: header in text, data records of 16- or 24-bit samples, annotations among them.</summary>
/// <remarks>
/// <source key="edf-1992">B. Kemp et al. 1992, <i>A simple format for exchange of digitized polygraphic recordings</i>;
/// B. Kemp and J. Olivan 2003, EDF+.</source> BDF is the same with 24-bit samples.
/// </remarks>
public static class EdfReader
{
    private const int HeadBytes = 256;

    /// <summary>Whether the bytes begin like an EDF or BDF file.</summary>
    /// <param name="bytes">The first bytes.</param>
    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes.StartsWith("0       "u8) || IsBdf(bytes);

    /// <summary>Reads a whole file.</summary>
    /// <param name="bytes">The file.</param>
    /// <exception cref="RecordingException">It cannot be used.</exception>
    public static Recording Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 2 * HeadBytes)
        {
            throw new RecordingException(0, 0, "header", $"{bytes.Length} bytes", "at least 512 bytes of header", "the file was cut short: copy it again");
        }

        EdfHeader header = EdfHeader.Read(bytes, IsBdf(bytes) ? 3 : 2);
        int available = header.RecordBytes == 0 ? 0 : (bytes.Length - header.HeaderBytes) / header.RecordBytes;
        List<string> notes = [];
        int records = header.Records < 0 ? available : Math.Min(header.Records, available);
        if (header.Records > available)
        {
            notes.Add($"the header promises {header.Records} records, {available} are there: the recording was cut short");
        }

        if (records == 0)
        {
            throw new RecordingException(0, 0, "records", "no whole data record", "at least one", "the file was cut short: copy it again");
        }

        return Assemble(bytes, header, records, notes);
    }

    private static bool IsBdf(ReadOnlySpan<byte> bytes) => bytes.Length > 8 && bytes[0] == 0xFF && bytes[1..8].SequenceEqual("BIOSEMI"u8);

    private static Recording Assemble(ReadOnlySpan<byte> bytes, EdfHeader header, int records, List<string> notes)
    {
        int most = header.Signals.Where(s => !s.IsAnnotation).Select(s => s.PerRecord).DefaultIfEmpty(0).Max();
        if (most == 0 || !(header.RecordSeconds > 0))
        {
            throw new RecordingException(0, 0, "signals", "no signal with samples", "at least one signal, and a record longer than 0 s", "check that this is the recording: the file holds annotations alone");
        }

        double rate = most / header.RecordSeconds;
        List<Channel> channels = [];
        List<Mark> marks = [];
        double[] onsets = new double[records];
        Array.Fill(onsets, double.NaN);
        int at = 0;
        foreach (EdfSignal signal in header.Signals)
        {
            int offset = header.HeaderBytes + at;
            at += signal.PerRecord * header.SampleBytes;
            if (signal.IsAnnotation)
            {
                for (int r = 0; r < records; r++)
                {
                    Annotations(bytes.Slice(offset + r * header.RecordBytes, signal.PerRecord * header.SampleBytes), marks, ref onsets[r]);
                }
            }
            else if (signal.PerRecord != most)
            {
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"{signal.Label} has {signal.PerRecord / header.RecordSeconds:0.#} samples a second, the others {rate:0.#}: it is left out"));
            }
            else
            {
                channels.Add(Samples(bytes, header, signal, offset, records));
            }
        }

        List<Gap> gaps = header.Interrupted ? Spread(channels, onsets, rate, most) : [];
        double start = double.IsNaN(onsets[0]) ? 0 : onsets[0];
        Mark[] placed = [.. marks.Select(m => m with { StartSeconds = m.StartSeconds - start, EndSeconds = m.EndSeconds - start }).OrderBy(m => m.StartSeconds)];
        return new(rate, channels, placed) { Gaps = gaps, Notes = notes };
    }

    private static Channel Samples(ReadOnlySpan<byte> bytes, EdfHeader header, EdfSignal signal, int offset, int records)
    {
        float[] counts = new float[records * signal.PerRecord];
        for (int r = 0, k = 0; r < records; r++)
        {
            ReadOnlySpan<byte> data = bytes.Slice(offset + r * header.RecordBytes, signal.PerRecord * header.SampleBytes);
            if (header.SampleBytes == 2)
            {
                for (int i = 0; i < data.Length; i += 2)
                {
                    counts[k++] = BinaryPrimitives.ReadInt16LittleEndian(data[i..]);
                }
            }
            else
            {
                for (int i = 0; i < data.Length; i += 3)
                {
                    counts[k++] = (data[i] | data[i + 1] << 8 | data[i + 2] << 16) << 8 >> 8;
                }
            }
        }

        (string unit, double factor) = Units.Of(signal.Unit);
        double gain = (signal.PhysicalMax - signal.PhysicalMin) / (signal.DigitalMax - signal.DigitalMin);
        return new(signal.Label, unit, counts, gain * factor, (signal.PhysicalMin - gain * signal.DigitalMin) * factor)
        {
            LeastCount = signal.DigitalMin,
            GreatestCount = signal.DigitalMax,
        };
    }

    /// <summary>A list of annotations: +onset[\x15duration]\x14text\x14…\x14\0, the first of a record without a text.</summary>
    private static void Annotations(ReadOnlySpan<byte> data, List<Mark> marks, ref double recordOnset)
    {
        while (data.Length > 0 && data[0] is (byte)'+' or (byte)'-')
        {
            int end = data.IndexOf((byte)0);
            ReadOnlySpan<byte> list = end < 0 ? data : data[..end];
            data = end < 0 ? default : data[(end + 1)..];
            string[] parts = Encoding.UTF8.GetString(list).Split('\x14');
            string[] when = parts[0].Split('\x15');
            if (!double.TryParse(when[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double onset))
            {
                continue;
            }

            double lasts = when.Length > 1 && double.TryParse(when[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double d) ? d : 0;
            if (parts.Length > 1 && parts[1].Length == 0 && double.IsNaN(recordOnset))
            {
                recordOnset = onset;
            }

            foreach (string text in parts.Skip(1).Where(t => t.Trim().Length > 0))
            {
                marks.Add(new(onset, onset + lasts, text.Trim()));
            }
        }
    }

    /// <summary>Puts the records of an interrupted recording where they belong in time.</summary>
    private static List<Gap> Spread(List<Channel> channels, double[] onsets, double rate, int perRecord)
    {
        List<Gap> gaps = [];
        int[] places = new int[onsets.Length];
        for (int r = 0; r < onsets.Length; r++)
        {
            int follows = r == 0 ? 0 : places[r - 1] + perRecord;
            places[r] = double.IsNaN(onsets[r]) ? follows : Math.Max(follows, (int)Math.Round((onsets[r] - onsets[0]) * rate));
            if (places[r] > follows)
            {
                gaps.Add(new(follows, places[r] - follows));
            }
        }

        for (int c = 0; c < channels.Count && gaps.Count > 0; c++)
        {
            float[] spread = new float[places[^1] + perRecord];
            for (int r = 0; r < places.Length; r++)
            {
                channels[c].Counts.AsSpan(r * perRecord, perRecord).CopyTo(spread.AsSpan(places[r]));
            }

            foreach (Gap gap in gaps)
            {
                spread.AsSpan(gap.Start, gap.Count).Fill(spread[gap.Start - 1]);
            }

            channels[c] = channels[c] with { Counts = spread };
        }

        return gaps;
    }
}
