using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Log;

public sealed class LogReaderTests
{
    [Fact]
    public void Keeps_the_demo_log_as_its_maker_draws_it()
    {
        string file = Path.Combine(Path.GetDirectoryName(MadeHand.File)!, "parts-log.csv");
        if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DOCS") == "1")
        {
            File.WriteAllText(file, BoatyardLog.Text());
        }

        Assert.Equal(BoatyardLog.Text(), File.ReadAllText(file).ReplaceLineEndings("\n"));
        Assert.Empty(Read(BoatyardLog.Text()).Errors);
    }

    [Fact]
    public void Reads_what_is_known_of_each_life()
    {
        LogReading log = Read(Lines(
            "finger,index,pla-along,A,2026-01-01,2026-01-05,2026-01-11,found broken,knock",
            "finger,middle,pla-along,A,2026-01-01,,2026-01-09,broke,\"fell, hard\"",
            "finger,ring,pla-along,,2026-01-01,,2026-02-01,retired,new revision",
            "finger,little,,,2026-01-01,2026-01-21,,,",
            "finger,index,,,2026-02-01,,2026-02-01,broke,",
            "finger,middle,,,2026-02-01,,2026-02-04,found broken,"));
        Assert.Empty(log.Errors);
        Assert.Equal([new LifeRecord(4, 10), LifeRecord.BrokeAt(8), LifeRecord.WholeAt(31), LifeRecord.WholeAt(20), new(0, 1), new(0, 3)], log.Entries.Select(e => e.Life));
        Assert.Equal("fell, hard", log.Entries[1].Cause);
        Assert.Equal(new DateOnly(2026, 2, 4), log.LastDay);
    }

    [Theory]
    [InlineData("finger,index,,,2026-02-01,,2026-01-01,broke,", 2, 28, "ended", "before it was fitted")]
    [InlineData("fingr,index,,,2026-02-01,2026-02-02,,,", 2, 1, "part", "fingr")]
    [InlineData("finger,thumb,,,2026-02-01,2026-02-02,,,", 2, 8, "position", "thumb")]
    [InlineData("finger,index,steel,,2026-02-01,2026-02-02,,,", 2, 14, "material", "steel")]
    [InlineData("finger,index,,,2026-02-30,2026-03-02,,,", 2, 16, "fitted", "no day")]
    [InlineData("finger,index,,,01.02.2026,2026-03-02,,,", 2, 16, "fitted", "no day")]
    [InlineData("finger,index,,,,2026-03-02,,,", 2, 16, "fitted", "nothing")]
    [InlineData("finger,index,,,2026-02-01,2026-01-02,,,", 2, 27, "last_seen_whole", "before it was fitted")]
    [InlineData("finger,index,,,2026-02-01,2026-03-09,2026-03-01,found broken,", 2, 27, "last_seen_whole", "after it ended")]
    [InlineData("finger,index,,,2026-02-01,,,,", 2, 27, "last_seen_whole", "still fitted")]
    [InlineData("finger,index,,,2026-02-01,,,broke,", 2, 28, "ended", "nothing")]
    [InlineData("finger,index,,,2026-02-01,,2026-02-03,,", 2, 39, "how", "nothing")]
    [InlineData("finger,index,,,2026-02-01,,2026-02-03,snapped,", 2, 39, "how", "snapped")]
    [InlineData("finger,index,,2026-02-01,,2026-02-03,broke,", 2, 1, "row", "8 cells")]
    [InlineData("finger,\"index,,,2026-02-01,,2026-02-03,broke,", 2, 1, "row", "not closed")]
    public void Tells_what_is_wrong_and_where(string row, int line, int column, string key, string found)
    {
        InputError error = Assert.Single(Read(Lines(row)).Errors);
        Assert.Equal((line, column, key), (error.Line, error.Column, error.Key));
        Assert.Contains(found, error.Found, StringComparison.Ordinal);
        Assert.NotEqual("", error.Allowed);
        Assert.NotEqual("", error.Fix);
    }

    [Fact]
    public void Tells_of_lines_that_contradict_each_other()
    {
        InputError same = Assert.Single(Read(Lines("pin,index mcp,,,2026-01-01,,2026-01-09,broke,", "pin,index mcp,,,2026-01-01,,2026-01-09,broke,")).Errors);
        Assert.Contains("same as line 2", same.Found, StringComparison.Ordinal);
        InputError two = Assert.Single(Read(Lines("pin,index mcp,,,2026-01-01,2026-03-01,,,", "pin,index mcp,,,2026-02-01,2026-03-01,,,")).Errors);
        Assert.Equal((3, "fitted"), (two.Line, two.Key));
        Assert.Contains("line 2", two.Found, StringComparison.Ordinal);
        Assert.Empty(Read(Lines("pin,index mcp,,,2026-01-01,,2026-02-01,broke,", "pin,index mcp,,,2026-02-01,2026-03-01,,,")).Errors);
    }

    [Fact]
    public void Tells_of_a_file_that_is_no_log()
    {
        Assert.Contains("empty", Assert.Single(Read("").Errors).Found, StringComparison.Ordinal);
        Assert.Contains("semicolons", Assert.Single(Read("part;position\n").Errors).Fix, StringComparison.Ordinal);
        Assert.Contains("without parts", Assert.Single(Read(LogReader.Header + "\n\n").Errors).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_every_fault_at_once()
    {
        LogReading log = Read(Lines("fingr,index,,,2026-02-01,2026-02-02,,,", "finger,index,,,x,2026-02-02,,,"));
        Assert.Equal([2, 3], log.Errors.Select(e => e.Line));
        Assert.Empty(log.Entries);
    }

    [Fact]
    public void Takes_a_byte_order_mark_and_line_ends_of_other_systems() =>
        Assert.Single(Read("\uFEFF" + Lines("finger,index,,,2026-02-01,2026-02-02,,,").ReplaceLineEndings("\r\n")).Entries);

    internal static LogReading Read(string text) => LogReader.Read(text, "log.csv", MadeHand.Boatyard());

    internal static string Lines(params string[] rows) => string.Join('\n', [LogReader.Header, .. rows]) + "\n";
}
