using System.Text.Json;

namespace Graspwright.Cli.Tests;

/// <summary>Measuring and sheets as a maker types them.</summary>
public sealed class SheetVerbTests
{
    private static readonly string Filled = Path.Combine(Path.GetDirectoryName(Started.Demo)!, "measured.csv");

    [Fact]
    public void Sheets_are_the_same_bytes_in_two_processes()
    {
        using Folder folder = new();
        string first = folder["first"], second = folder["second"];
        foreach (string to in (string[])[first, second])
        {
            Started done = Started.Run("sheets", Started.Demo, "--write", to, "--paper", "letter");
            Assert.Equal((0, ""), (done.Code, done.Talk));
        }

        string[] files = [.. Directory.GetFiles(first).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
        Assert.Equal(["batch.pdf", "bench.pdf", "clock.pdf", "copies.pdf", "drawer.pdf", "grip-card.pdf", "holes.pdf", "jobs.pdf", "measuring.pdf", "proof.pdf"], files);
        Assert.All(files, f => Assert.Equal(File.ReadAllBytes(Path.Combine(first, f)), File.ReadAllBytes(Path.Combine(second, f))));
    }

    [Fact]
    public void The_filled_sheet_is_shown_first_and_applied_only_when_asked()
    {
        using Folder folder = new();
        string hand = folder["hand.toml"];
        File.Copy(Started.Demo, hand);
        string before = File.ReadAllText(hand);
        Started shown = Started.Run("measure", hand, "--read", Filled);
        Assert.Equal((0, ""), (shown.Code, shown.Talk));
        Assert.Contains("--apply does it", shown.Answers, StringComparison.Ordinal);
        Assert.Contains("Tries disagree at 10°", shown.Answers, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(hand));

        Started applied = Started.Run("measure", hand, "--read", Filled, "--apply");
        Assert.Equal(0, applied.Code);
        string after = File.ReadAllText(hand);
        Assert.NotEqual(before, after);
        Assert.Contains("# three layers of felt under the cuff", after, StringComparison.Ordinal);
        Assert.Equal(0, Started.Run("dose", hand).Code);
    }

    [Fact]
    public void An_empty_sheet_goes_out_as_pages_and_csv()
    {
        using Folder folder = new();
        string pdf = folder["sheet.pdf"], csv = folder["sheet.csv"];
        Assert.Equal(0, Started.Run("measure", Started.Demo, "--pdf", pdf, "--csv", csv).Code);
        Assert.StartsWith("%PDF-1.7", File.ReadAllText(pdf), StringComparison.Ordinal);
        Started empty = Started.Run("measure", Started.Demo, "--read", csv);
        Assert.Equal(2, empty.Code);
        Assert.Contains("no line has a value", empty.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Kilograms_written_as_newtons_are_asked_about_and_may_be_insisted_on()
    {
        using Folder folder = new();
        string csv = folder["sheet.csv"];
        File.WriteAllText(csv, File.ReadAllText(Filled).Replace(",kg,", ",N,", StringComparison.Ordinal));
        Started asked = Started.Run("measure", Started.Demo, "--read", csv);
        Assert.Equal(2, asked.Code);
        Assert.Contains("read in kilograms and written as newtons", asked.Talk, StringComparison.Ordinal);
        Assert.Equal(0, Started.Run("measure", Started.Demo, "--read", csv, "--as-written").Code);
    }

    [Theory]
    [InlineData("measure", "neither --pdf")]
    [InlineData("measure --apply", "neither --pdf")]
    [InlineData("measure --csv x.csv --apply", "--read FILE beside it")]
    [InlineData("measure --read nowhere.csv", "cannot be read")]
    [InlineData("sheets --write out --paper a5", "A4, Letter")]
    [InlineData("sheets", "--write")]
    [InlineData("readings --count 2", "4 to 60")]
    [InlineData("dose --hold 4", "'4'")]
    [InlineData("dose --worn 0h", "more than nothing")]
    [InlineData("dose --grips -3", "nothing or more")]
    public void Wrong_options_are_named_with_what_is_allowed(string line, string says)
    {
        string[] words = line.Split(' ');
        Started done = Started.Run([words[0], Started.Demo, .. words[1..]]);
        Assert.Equal(2, done.Code);
        Assert.Contains(says, done.Talk, StringComparison.Ordinal);
        Assert.Empty(done.Answers);
    }

    [Theory]
    [InlineData("dose", "mean_load")]
    [InlineData("card", "hook_seconds")]
    [InlineData("proof", "proof_hooked")]
    public void Answers_come_in_the_one_shape(string verb, string figure)
    {
        Started done = Started.Run(verb, Started.Demo, "--json");
        Assert.Equal((0, ""), (done.Code, done.Talk));
        using JsonDocument json = JsonDocument.Parse(done.Answers);
        Assert.Equal(verb, json.RootElement.GetProperty("verb").GetString());
        Assert.True(json.RootElement.GetProperty("figures").GetProperty(figure).GetProperty("value").GetDouble() > 0);
        Assert.True(json.RootElement.GetProperty("cautions").GetArrayLength() > 0);
    }

    [Fact]
    public void Readings_of_the_bench_come_in_the_format_they_go_back_in()
    {
        using Folder folder = new();
        string csv = folder["bench.csv"], pdf = folder["bench.pdf"];
        Started done = Started.Run("readings", Started.Demo, "--count", "6", "--csv", csv, "--pdf", pdf);
        Assert.Equal((0, ""), (done.Code, done.Talk));
        string[] lines = File.ReadAllLines(csv);
        Assert.Equal(7, lines.Length);
        Assert.StartsWith("reading,stroke,object,locks,wrist_deg,quantity", lines[0], StringComparison.Ordinal);
        Assert.True(new FileInfo(pdf).Length > 1000);
    }
}
