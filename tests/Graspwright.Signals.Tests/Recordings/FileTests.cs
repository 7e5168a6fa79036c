using System.Text;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Tests.Recordings;

public sealed class FileTests
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "Recordings", "Files");

    [Theory]
    [InlineData("edflib.edf", -32768, 32767)]
    [InlineData("edflib.bdf", -8388608, 8388607)]
    public void Reads_what_EDFlib_wrote_to_the_bit(string name, int low, int high)
    {
        Recording recording = EdfReader.Read(File.ReadAllBytes(Path.Combine(Folder, name)));

        Assert.Equal(250, recording.RateHertz);
        Assert.Equal(["ridge", "hollow"], recording.Channels.Select(c => c.Name));
        for (int s = 0; s < 2; s++)
        {
            Channel channel = recording.Channels[s];
            Assert.Equal(750, channel.Counts.Length);
            for (int i = 0; i < 750; i++)
            {
                int expected = i == 0 ? low : i == 1 ? high : (int)((uint)(i * 7919 + s * 104729 + i * i * 31) % (uint)(2 * high + 1)) - high;
                Assert.Equal(expected, (int)channel.Counts[i]);
            }

            Assert.Equal("V", channel.Unit);
            Assert.Equal(-3e-3, channel.Gain * low + channel.Offset, 1e-12);
            Assert.Equal(3e-3, channel.Gain * high + channel.Offset, 1e-12);
        }

        Assert.Equal([new(0.5, 1.5, "rest"), new(1.5, 2.3, "fist/arm overhead")], recording.Marks);
        Assert.Equal(("fist", "arm overhead"), (recording.Marks[1].Gesture, recording.Marks[1].Meanwhile));
    }

    [Fact]
    public void Reads_what_SciPy_wrote_as_WAV_to_the_bit()
    {
        Recording recording = WavReader.Read(File.ReadAllBytes(Path.Combine(Folder, "scipy.wav")));
        Assert.Equal((1000.0, 2, 200), (recording.RateHertz, recording.Channels.Count, recording.Length));
        for (int s = 0; s < 2; s++)
        {
            Assert.All(Enumerable.Range(0, 200), i => Assert.Equal((i * 7919 + s * 104729) % 65536 - 32768, recording.Channels[s].Counts[i]));
        }
    }

    [Fact]
    public void Reads_back_the_EDF_that_it_writes()
    {
        Recording made = new(100, [new("ridge", "V", [.. Enumerable.Range(0, 250).Select(i => (float)(i * 131 % 4001 - 2000))], 1e-6)], [new(0.25, 1.5, "rest"), new(1.5, 2.5, "fist/wet")]);
        Recording read = EdfReader.Read(EdfWriter.Write(made));
        Assert.Equal(made.Channels[0].Counts, read.Channels[0].Counts[..250]);
        Assert.Equal(made.Marks, read.Marks);
        Assert.Equal(1e-6, read.Channels[0].Gain, 1e-12);
    }

    [Fact]
    public void Says_that_a_file_was_cut_short()
    {
        byte[] whole = File.ReadAllBytes(Path.Combine(Folder, "edflib.edf"));
        Recording cut = EdfReader.Read(whole.AsSpan(0, whole.Length - 10));
        Assert.Contains("cut short", Assert.Single(cut.Notes), StringComparison.Ordinal);
        Assert.Equal(500, cut.Length);
        Assert.Throws<RecordingException>(() => EdfReader.Read(whole.AsSpan(0, 300)));
        Assert.Throws<RecordingException>(() => EdfReader.Read(whole.AsSpan(0, 900)));
    }

    [Theory]
    [InlineData("time_s,ridge [mV],gesture\n0,1.5,rest\n0.01,-2.5,rest\n0.02,3,fist\n")]
    [InlineData("\uFEFFtime_s;ridge [mV];gesture\r\n0;1,5;rest\r\n0,01;-2,5;rest\r\n0,02;3;fist\r\n")]
    [InlineData("# made up\ntime (ms)\tridge (mV)\tlabel\n0\t1.5\trest\n10\t-2.5\trest\n20\t3\tfist")]
    public void Reads_tables_as_people_write_them(string text)
    {
        Recording recording = ReadTable(text, new());
        Assert.Equal(100, recording.RateHertz, 1e-9);
        Channel channel = Assert.Single(recording.Channels);
        Assert.Equal(("ridge", "V"), (channel.Name, channel.Unit));
        Assert.Equal([1.5e-3, -2.5e-3, 3e-3], channel.Values());
        Assert.Equal(["rest", "fist"], recording.Marks.Select(m => m.Label));
        Assert.Equal(0.02, recording.Marks[0].EndSeconds, 1e-9);
    }

    [Fact]
    public void Reads_the_same_however_the_bytes_are_cut()
    {
        StringBuilder text = new("time_s,a,b\n");
        for (int i = 0; i < 400; i++)
        {
            text.Append(FormattableString.Invariant($"{i / 1000.0},{i * 37 % 211 - 100},{Math.Sin(i):G9}\n"));
        }

        byte[] bytes = Encoding.UTF8.GetBytes(text.ToString());
        Recording whole = ReadTable(text.ToString(), new());
        foreach (int piece in (int[])[1, 7, 64, 1000])
        {
            TableReader reader = new(new());
            for (int at = 0; at < bytes.Length; at += piece)
            {
                reader.Feed(bytes.AsSpan(at, Math.Min(piece, bytes.Length - at)));
            }

            Recording again = reader.Finish();
            Assert.Equal(whole.Channels[1].Counts, again.Channels[1].Counts);
            Assert.Equal(whole.RateHertz, again.RateHertz);
        }

        Assert.Equal((float)Math.Sin(123), whole.Channels[1].Counts[123], 1e-7f);
    }

    [Fact]
    public void Fills_gaps_and_counts_broken_lines()
    {
        StringBuilder text = new("time_s,a\n");
        for (int i = 0; i < 300; i++)
        {
            text.Append(i is >= 100 and < 110 ? "" : i == 50 ? "0.0#0,\n" : FormattableString.Invariant($"{i / 100.0},{i}\n"));
        }

        Recording recording = ReadTable(text.ToString(), new());
        Assert.Equal(1, recording.Broken);
        Assert.Equal([new(50, 1), new(100, 10)], recording.Gaps);
        Assert.Equal(300, recording.Length);
        Assert.Equal(299, recording.Channels[0].Counts[299]);
        Assert.Equal(99, recording.Channels[0].Counts[105]);
    }

    [Theory]
    [InlineData("a,b\n1,2\n3,4\n", "rate")]
    [InlineData("time_s,a\n0,1\n0.1,2\n0.05,3\n", "before")]
    [InlineData("time_s,a\n0,x\n1,y\n2,z\n3,w\n", "cannot be read")]
    [InlineData("", "no samples")]
    [InlineData("time_s,gesture\n0,rest\n1,fist\n", "no column of a signal")]
    [InlineData("time [parsec],a\n0,1\n1,2\n", "parsec")]
    public void Explains_tables_that_cannot_be_used(string text, string words)
    {
        RecordingException fault = Assert.Throws<RecordingException>(() => ReadTable(text, new()));
        Assert.Contains(words, $"{fault.Found} {fault.Allowed}", StringComparison.Ordinal);
        Assert.NotEmpty(fault.Fix);
    }

    [Fact]
    public void A_table_without_header_or_times_takes_names_and_rate_as_told()
    {
        Recording recording = ReadTable("-22,2,0\n8,3,0\n-6,3,2\n", new() { RateHertz = 200, Names = ["one", "two", "label"] });
        Assert.Equal(["one", "two"], recording.Channels.Select(c => c.Name));
        Assert.Equal([new(0, 0.01, "0"), new(0.01, 0.015, "2")], recording.Marks);
    }

    [Fact]
    public void Reads_cues_and_refuses_crooked_ones()
    {
        Assert.Equal([new(0.5, 2, "fist"), new(3, 4, "point, wet")], CueList.Read("start_s,end_s,gesture\n3,4,\"point, wet\"\n0.5,2,fist\n"));
        Assert.Equal(2, Assert.Throws<RecordingException>(() => CueList.Read("start_s,end_s,gesture\n2,1,fist\n")).Line);
        Assert.Equal(1, Assert.Throws<RecordingException>(() => CueList.Read("from,to\n")).Line);
        Assert.Equal([new(0, 5, "a"), new(5, 9, "b")], CueList.Ended([new(0, 0, "a"), new(5, 5, "b")], 9));
    }

    [Fact]
    public void Live_lines_survive_halves_and_noise_and_count_what_was_lost()
    {
        LiveLines lines = new(2, counted: true);
        List<double> first = [];
        byte[] bytes = Encoding.ASCII.GetBytes("garbage,3\n254,1,2\r\n255,3,4\n0,5,6\n4,7,8\nnoise\x01\n5,9\n6,10,11\n");
        foreach (byte b in bytes)
        {
            lines.Feed([b], v => first.Add(v[0]));
        }

        Assert.Equal([1, 3, 5, 7, 10], first);
        Assert.Equal((5L, 2L, 4L, 2L), (lines.Samples, lines.Broken, lines.Lost, lines.Holes));
    }

    private static Recording ReadTable(string text, TableHints hints)
    {
        TableReader reader = new(hints);
        reader.Feed(Encoding.UTF8.GetBytes(text));
        return reader.Finish();
    }
}
