using System.Buffers.Binary;
using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>Reads WAV: whole numbers of 8 to 32 bits or floating point, cue points with their labels.</summary>
/// <remarks>RIFF form of Microsoft and IBM 1991 (layout from memory, checked against files of an independent writer).</remarks>
public static class WavReader
{
    private const int Pcm = 1, Float = 3, Extensible = 0xFFFE;

    /// <summary>Whether the bytes begin like a WAV file.</summary>
    /// <param name="bytes">The first bytes.</param>
    public static bool Begins(ReadOnlySpan<byte> bytes) => bytes.Length >= 12 && bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WAVE"u8);

    /// <summary>Reads a whole file.</summary>
    /// <param name="bytes">The file.</param>
    /// <exception cref="RecordingException">It cannot be used.</exception>
    public static Recording Read(ReadOnlySpan<byte> bytes)
    {
        if (!Begins(bytes))
        {
            throw new RecordingException(0, 0, "header", "no RIFF WAVE header", "a WAV file", "check the name of the file");
        }

        int format = 0, channels = 0, rate = 0, bits = 0;
        ReadOnlySpan<byte> data = default;
        bool hasData = false;
        Dictionary<uint, double> cues = [];
        Dictionary<uint, string> labels = [];
        List<string> notes = [];
        for (int at = 12; at + 8 <= bytes.Length;)
        {
            ReadOnlySpan<byte> name = bytes.Slice(at, 4);
            uint told = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]);
            int length = (int)Math.Min(told, (uint)(bytes.Length - at - 8));
            if (length < told)
            {
                notes.Add("the file ends before the length in its header: the recording was cut short");
            }

            ReadOnlySpan<byte> body = bytes.Slice(at + 8, length);
            if (name.SequenceEqual("fmt "u8) && length >= 16)
            {
                format = BinaryPrimitives.ReadUInt16LittleEndian(body);
                channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
                rate = BinaryPrimitives.ReadInt32LittleEndian(body[4..]);
                bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
                format = format == Extensible && length >= 26 ? BinaryPrimitives.ReadUInt16LittleEndian(body[24..]) : format;
            }
            else if (name.SequenceEqual("data"u8))
            {
                data = body;
                hasData = true;
            }
            else if (name.SequenceEqual("cue "u8))
            {
                Cues(body, cues);
            }
            else if (name.SequenceEqual("LIST"u8) && body.StartsWith("adtl"u8))
            {
                Labels(body[4..], labels);
            }

            at += 8 + length + (length & 1);
        }

        if (!hasData || channels == 0 || rate <= 0 || !Known(format, bits))
        {
            throw new RecordingException(0, 0, "format", $"format {format}, {channels} channels, {rate} Hz, {bits} bits", "whole numbers of 8, 16, 24, 32 bits or floating point of 32, 64 bits", "write the file again as 16-bit PCM");
        }

        return new(rate, Samples(data, format, channels, bits), [.. cues.OrderBy(c => c.Value).Select(c => new Mark(c.Value / rate, c.Value / rate, labels.GetValueOrDefault(c.Key, "")))]) { Notes = notes };
    }

    private static bool Known(int format, int bits) => format == Pcm ? bits is 8 or 16 or 24 or 32 : format == Float && bits is 32 or 64;

    private static Channel[] Samples(ReadOnlySpan<byte> data, int format, int channels, int bits)
    {
        int width = bits / 8, count = data.Length / (width * channels);
        float[][] counts = [.. Enumerable.Range(0, channels).Select(_ => new float[count])];
        for (int i = 0, at = 0; i < count; i++)
        {
            for (int c = 0; c < channels; c++, at += width)
            {
                ReadOnlySpan<byte> s = data.Slice(at, width);
                counts[c][i] = (format, width) switch
                {
                    (Pcm, 1) => s[0] - 128,
                    (Pcm, 2) => BinaryPrimitives.ReadInt16LittleEndian(s),
                    (Pcm, 3) => (s[0] | s[1] << 8 | s[2] << 16) << 8 >> 8,
                    (Pcm, _) => BinaryPrimitives.ReadInt32LittleEndian(s),
                    (_, 4) => BinaryPrimitives.ReadSingleLittleEndian(s),
                    _ => (float)BinaryPrimitives.ReadDoubleLittleEndian(s),
                };
            }
        }

        double full = format == Float ? 1 : Math.Pow(2, bits - 1);
        return [.. counts.Select((c, i) => new Channel(FormattableString.Invariant($"channel {i + 1}"), "", c, 1 / full)
        {
            LeastCount = format == Float ? -1 : -full,
            GreatestCount = format == Float ? 1 : full - 1,
        })];
    }

    private static void Cues(ReadOnlySpan<byte> body, Dictionary<uint, double> cues)
    {
        for (int at = 4; at + 24 <= body.Length; at += 24)
        {
            cues[BinaryPrimitives.ReadUInt32LittleEndian(body[at..])] = BinaryPrimitives.ReadUInt32LittleEndian(body[(at + 20)..]);
        }
    }

    private static void Labels(ReadOnlySpan<byte> body, Dictionary<uint, string> labels)
    {
        for (int at = 0; at + 12 <= body.Length;)
        {
            int length = (int)Math.Min(BinaryPrimitives.ReadUInt32LittleEndian(body[(at + 4)..]), (uint)(body.Length - at - 8));
            if (body.Slice(at, 4).SequenceEqual("labl"u8) && length > 4)
            {
                labels[BinaryPrimitives.ReadUInt32LittleEndian(body[(at + 8)..])] = Encoding.UTF8.GetString(body.Slice(at + 12, length - 4)).TrimEnd('\0', ' ');
            }

            at += 8 + length + (length & 1);
        }
    }
}
