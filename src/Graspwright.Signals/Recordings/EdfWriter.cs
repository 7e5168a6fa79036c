using System.Globalization;
using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>Writes EDF+: 16-bit samples in records of one second, marks as annotations. The date is the format's own for "not known".</summary>
public static class EdfWriter
{
    private const int AnnotationSamples = 60;

    /// <summary>Writes a recording.</summary>
    /// <param name="recording">Whole samples a second; counts within ±32 767.</param>
    /// <exception cref="ArgumentException">The rate is not whole, or a count does not fit.</exception>
    public static byte[] Write(Recording recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        int rate = (int)Math.Round(recording.RateHertz);
        if (rate != recording.RateHertz || rate < 1)
        {
            throw new ArgumentException("A whole number of samples a second.", nameof(recording));
        }

        int records = (recording.Length + rate - 1) / rate, signals = recording.Channels.Count + 1;
        List<byte> bytes = [.. Encoding.ASCII.GetBytes(Header(recording, rate, records, signals))];
        for (int r = 0; r < records; r++)
        {
            foreach (Channel channel in recording.Channels)
            {
                for (int i = r * rate; i < (r + 1) * rate; i++)
                {
                    float c = i < recording.Length ? channel.Counts[i] : channel.Counts[^1];
                    short count = c is >= short.MinValue and <= short.MaxValue ? (short)c : throw new ArgumentException("A count does not fit in 16 bits.", nameof(recording));
                    bytes.Add((byte)count);
                    bytes.Add((byte)(count >> 8));
                }
            }

            bytes.AddRange(Annotations(recording, r));
        }

        return [.. bytes];
    }

    private static string Header(Recording recording, int rate, int records, int signals)
    {
        StringBuilder h = new();
        void Field(string text, int width) => h.Append((text.Length > width ? text[..width] : text).PadRight(width));
        void Each(Func<Channel?, string> text, int width)
        {
            foreach (Channel c in recording.Channels)
            {
                Field(text(c), width);
            }

            Field(text(null), width);
        }

        Field("0", 8);
        Field("X X X X", 80);
        Field("Startdate X X X X", 80);
        Field("01.01.85", 8);
        Field("00.00.00", 8);
        Field((256 * (signals + 1)).ToString(CultureInfo.InvariantCulture), 8);
        Field("EDF+C", 44);
        Field(records.ToString(CultureInfo.InvariantCulture), 8);
        Field("1", 8);
        Field(signals.ToString(CultureInfo.InvariantCulture), 4);
        Each(c => c?.Name ?? "EDF Annotations", 16);
        Each(_ => "", 80);
        Each(c => c is null ? "" : c.Unit == "V" ? "uV" : c.Unit, 8);
        Each(c => Physical(c, short.MinValue), 8);
        Each(c => Physical(c, short.MaxValue), 8);
        Each(_ => "-32768", 8);
        Each(_ => "32767", 8);
        Each(_ => "", 80);
        Each(c => (c is null ? AnnotationSamples : rate).ToString(CultureInfo.InvariantCulture), 8);
        Each(_ => "", 32);
        return h.ToString();
    }

    private static string Physical(Channel? channel, int count)
    {
        if (channel is null)
        {
            return count < 0 ? "-1" : "1";
        }

        double value = (channel.Gain * count + channel.Offset) * (channel.Unit == "V" ? 1e6 : 1);
        string text = value.ToString("G7", CultureInfo.InvariantCulture);
        return text.Length <= 8 ? text : value.ToString("G5", CultureInfo.InvariantCulture);
    }

    private static byte[] Annotations(Recording recording, int record)
    {
        StringBuilder list = new();
        list.Append(CultureInfo.InvariantCulture, $"+{record}\x14\x14\0");
        foreach (Mark m in recording.Marks.Where(m => (int)m.StartSeconds == record))
        {
            list.Append(CultureInfo.InvariantCulture, $"+{m.StartSeconds:0.###}\x15{m.EndSeconds - m.StartSeconds:0.###}\x14{m.Label}\x14\0");
        }

        byte[] text = Encoding.UTF8.GetBytes(list.ToString());
        byte[] field = new byte[2 * AnnotationSamples];
        text.AsSpan(0, Math.Min(text.Length, field.Length)).CopyTo(field);
        return field;
    }
}
