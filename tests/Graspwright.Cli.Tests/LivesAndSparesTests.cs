using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class LivesAndSparesTests
{
    private static readonly string Log = Path.Combine(Path.GetDirectoryName(Started.Demo)!, "parts-log.csv");

    [Fact]
    public void Answers_from_the_log_that_the_hand_file_names()
    {
        using Folder folder = new();
        Started run = Started.Run("lives", Started.Demo, "--csv", folder["whole.csv"], "--svg", folder["pictures"]);
        Assert.Equal(0, run.Code);
        Assert.StartsWith("The log has 44 fingers", run.Answers, StringComparison.Ordinal);
        Assert.StartsWith("age [days],watched,broke,still whole [%]", File.ReadAllText(folder["whole.csv"]), StringComparison.Ordinal);
        Assert.Equal(["finger-paper.svg", "finger-whole.svg"], Directory.GetFiles(folder["pictures"]).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Prints_both_verbs_in_the_one_shape()
    {
        foreach (string verb in (string[])["lives", "spares"])
        {
            Started run = Started.Run(verb, Started.Demo, "--json");
            Assert.Equal((0, ""), (run.Code, run.Talk));
            using JsonDocument json = JsonDocument.Parse(run.Answers);
            Assert.Equal(verb, json.RootElement.GetProperty("verb").GetString());
            Assert.True(json.RootElement.GetProperty("tables").EnumerateObject().Any());
            Assert.Contains("dropped load", json.RootElement.GetProperty("cautions")[0].GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Takes_period_supply_and_chance_from_the_command_line()
    {
        using Folder folder = new();
        Started run = Started.Run("spares", Started.Demo, "--period", "120 days", "--supply", "2 days", "--chance", "1 %", "--today", "2026-04-05", "--csv", folder["drawer.csv"]);
        Assert.Equal(0, run.Code);
        Assert.Contains("To last 120 days and 2 days of supply, 122 days in all, with a chance of at most 1 %", run.Answers, StringComparison.Ordinal);
        Assert.Contains("today", run.Answers, StringComparison.Ordinal);
        Assert.StartsWith("article,fitted now,breaks expected [1],keep", File.ReadAllText(folder["drawer.csv"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lives", "--part", "fingr", "finger")]
    [InlineData("lives", "--by", "colour", "revision")]
    [InlineData("lives", "--log", "nowhere.csv", "no such file")]
    [InlineData("spares", "--today", "2026-02-30", "no day")]
    [InlineData("spares", "--today", "2026-01-01", "before the last day")]
    [InlineData("spares", "--period", "60", "90 days")]
    [InlineData("spares", "--chance", "90 %", "at most 50 %")]
    public void Refuses_what_it_cannot_use(string verb, string option, string value, string told)
    {
        Started run = Started.Run(verb, Started.Demo, option, value);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains(told, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_line_and_column_of_a_fault_in_the_log()
    {
        using Folder folder = new();
        string[] lines = File.ReadAllLines(Log);
        lines[2] = lines[2].Replace("2026-03-21", "2024-03-21", StringComparison.Ordinal);
        string bad = folder.Write("bad.csv", string.Join('\n', lines));
        Started run = Started.Run("lives", Started.Demo, "--log", bad, "--json");
        Assert.Equal(2, run.Code);
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        JsonElement error = json.RootElement.GetProperty("errors")[0];
        Assert.Equal((3, "ended"), (error.GetProperty("line").GetInt32(), error.GetProperty("key").GetString()));
        Assert.Contains("before it was fitted", error.GetProperty("found").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Says_how_to_begin_a_log_where_there_is_none()
    {
        using Folder folder = new();
        Started run = Started.Run("spares", folder.Changed("[files]\nlog = \"parts-log.csv\"\n", ""));
        Assert.Equal(2, run.Code);
        Assert.Contains("Add log = \"parts-log.csv\" to [files]", run.Talk, StringComparison.Ordinal);
    }
}
