using System.Globalization;
using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>A signal as the header describes it.</summary>
internal sealed record EdfSignal(string Label, string Unit, double PhysicalMin, double PhysicalMax, double DigitalMin, double DigitalMax, int PerRecord)
{
    public bool IsAnnotation => Label is "EDF Annotations" or "BDF Annotations";
}

/// <summary>The header of an EDF or BDF file.</summary>
internal sealed record EdfHeader(int HeaderBytes, bool Interrupted, int Records, double RecordSeconds, int SampleBytes, IReadOnlyList<EdfSignal> Signals)
{
    private const int Greatest = 4096;

    public int RecordBytes => Signals.Sum(s => s.PerRecord) * SampleBytes;

    public static EdfHeader Read(ReadOnlySpan<byte> bytes, int sampleBytes)
    {
        int headerBytes = (int)Number(bytes, 184, 8, "header bytes");
        int count = (int)Number(bytes, 252, 4, "number of signals");
        if (count is < 1 or > Greatest || headerBytes != 256 * (count + 1) || headerBytes > bytes.Length)
        {
            throw new RecordingException(0, 0, "header", $"{count} signals in {headerBytes} bytes of header", "256 bytes, and 256 more for each signal", "the file is damaged, or it is no EDF or BDF file");
        }

        bool interrupted = Text(bytes, 192, 44).StartsWith("EDF+D", StringComparison.Ordinal) || Text(bytes, 192, 44).StartsWith("BDF+D", StringComparison.Ordinal);
        List<EdfSignal> signals = [];
        for (int i = 0; i < count; i++)
        {
            int At(int before, int width) => 256 + count * before + i * width;
            string label = Text(bytes, At(0, 16), 16);
            EdfSignal signal = new(
                label,
                Text(bytes, At(96, 8), 8),
                Number(bytes, At(104, 8), 8, $"{label}, physical minimum"),
                Number(bytes, At(112, 8), 8, $"{label}, physical maximum"),
                Number(bytes, At(120, 8), 8, $"{label}, digital minimum"),
                Number(bytes, At(128, 8), 8, $"{label}, digital maximum"),
                (int)Number(bytes, At(216, 8), 8, $"{label}, samples a record"));
            if (signal.PerRecord is < 0 or > 1 << 24 || signal.DigitalMax <= signal.DigitalMin)
            {
                throw new RecordingException(0, 0, label, $"{signal.PerRecord} samples a record from {signal.DigitalMin} to {signal.DigitalMax}", "a number of samples, and a digital maximum above the minimum", "the header is damaged: write the file again");
            }

            signals.Add(signal);
        }

        return new(headerBytes, interrupted, (int)Number(bytes, 236, 8, "number of records"), Number(bytes, 244, 8, "length of a record"), sampleBytes, signals);
    }

    private static string Text(ReadOnlySpan<byte> bytes, int at, int length) => Encoding.Latin1.GetString(bytes.Slice(at, length)).Trim();

    private static double Number(ReadOnlySpan<byte> bytes, int at, int length, string key)
    {
        string text = Text(bytes, at, length);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new RecordingException(0, 0, key, $"'{text}' at byte {at}", "a number", "the header is damaged, or this is no EDF or BDF file");
    }
}
