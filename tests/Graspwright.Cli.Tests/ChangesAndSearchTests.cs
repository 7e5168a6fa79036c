using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class ChangesAndSearchTests
{
    [Fact]
    public void Changes_says_what_buys_most_and_what_fights_and_draws_the_steps()
    {
        using Folder folder = new();
        Started run = Started.Run("changes", Started.Demo, "--svg", folder["steps.svg"], "--csv", folder["gains.csv"], "--json");

        Assert.Equal(0, run.Code);
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.Contains("fight", json.RootElement.GetProperty("answer").GetString(), StringComparison.Ordinal);
        Assert.True(json.RootElement.GetProperty("tables").GetProperty("steps").GetProperty("rows").GetArrayLength() >= 7);
        Assert.StartsWith("<svg ", File.ReadAllText(folder["steps.svg"]), StringComparison.Ordinal);
        Assert.StartsWith("change,jobs_done", File.ReadAllText(folder["gains.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Search_writes_a_hand_file_whose_grip_is_what_the_front_says()
    {
        using Folder folder = new();
        Started run = Started.Run("search", Started.Demo, "--evaluations", "128", "--csv", folder["front.csv"], "--svg", folder["front.svg"], "--write", folder["better.toml"], "--point", "1");

        Assert.Equal(0, run.Code);
        Assert.StartsWith("Of 128 designs, ", run.Answers, StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(folder["front.csv"]);
        double grip = double.Parse(lines[2].Split(',')[1], System.Globalization.CultureInfo.InvariantCulture);
        Started again = Started.Run("grip", folder["better.toml"], "--object", "mug", "--locks", "all free", "--effort", "all-day", "--json");
        using JsonDocument json = JsonDocument.Parse(again.Answers);
        Assert.Equal(json.RootElement.GetProperty("figures").GetProperty("grip_force").GetProperty("value").GetDouble(), grip, 1e-6);
    }

    [Theory]
    [InlineData("nearest", "changes", "--only", "softer pad")]
    [InlineData("jobs_done", "changes", "--measure", "jobs_don")]
    [InlineData("where the fulcrum goes", "search", "--search", "where the fulcrum go")]
    [InlineData("1 or more", "search", "--evaluations", "0")]
    [InlineData("1 or more", "search", "--threads", "-2")]
    [InlineData("--resume", "search", "--resume", "not-there.checkpoint")]
    public void Refuses_what_it_cannot_use(string told, string verb, string option, string value)
    {
        Started run = Started.Run(verb, Started.Demo, option, value);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains(told == "nearest" ? "Did you mean 'softer pads'" : told, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_that_names_nothing_is_told_where_it_stands_with_the_nearest()
    {
        using Folder folder = new();
        Started run = Started.Run("search", folder.Changed(".free.\"crank.fulcrum.x\"]", ".free.\"crank.fulcrm.x\"]"));
        Assert.Equal(2, run.Code);
        Assert.Contains("crank.fulcrum", run.Talk, StringComparison.Ordinal);
        Assert.Matches(@"hand\.toml:\d+:\d+", run.Talk);
    }

    [Fact]
    public void A_range_that_empties_the_designs_is_told_where_it_stands()
    {
        using Folder folder = new();
        Started run = Started.Run("search", folder.Changed("from = \"18 mm\"\nto = \"28 mm\"", "from = \"28 mm\"\nto = \"18 mm\""));
        Assert.Equal(2, run.Code);
        Assert.Contains("exchange from and to", run.Talk, StringComparison.OrdinalIgnoreCase);
    }
}
