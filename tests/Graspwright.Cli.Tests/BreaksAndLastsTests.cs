using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class BreaksAndLastsTests
{
    [Fact]
    public void Breaks_says_what_goes_first_and_draws_it()
    {
        using Folder folder = new();
        Started run = Started.Run("breaks", Started.Demo, "--svg", folder["order.svg"], "--csv", folder["order.csv"], "--drop", "250 g", "--height", "1 m");

        Assert.Equal(0, run.Code);
        Assert.StartsWith("Pushed sideways at its tip, the ", run.Answers, StringComparison.Ordinal);
        Assert.Contains("times their weight", string.Join(' ', run.Answers.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("not a rated lifting device", run.Answers, StringComparison.Ordinal);
        Assert.StartsWith("<svg ", File.ReadAllText(folder["order.svg"]), StringComparison.Ordinal);
        Assert.StartsWith("finger,order,what,where,push [N]", File.ReadAllText(folder["order.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Lasts_gives_bands_in_two_materials_and_draws_them()
    {
        using Folder folder = new();
        Started run = Started.Run("lasts", Started.Demo, "--material", "pla-along", "--svg", folder["life.svg"], "--json");

        Assert.Equal(0, run.Code);
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.Equal("days", json.RootElement.GetProperty("figures").GetProperty("first_failure_days").GetProperty("unit").GetString());
        JsonElement side = json.RootElement.GetProperty("tables").EnumerateObject().Single(t => t.Name.StartsWith("materials side by side", StringComparison.Ordinal)).Value;
        Assert.Equal(2, side.GetProperty("rows").GetArrayLength());
        Assert.Contains("three weeks", File.ReadAllText(folder["life.svg"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Grip_wears_the_hinges_over_the_days_asked_for()
    {
        double few = Worn("1"), many = Worn("3650");
        Assert.True(many > few);

        static double Worn(string days)
        {
            Started run = Started.Run("grip", Started.Demo, "--object", "mug", "--locks", "all free", "--effort", "all-day", "--worn-days", days, "--json");
            Assert.Equal(0, run.Code);
            using JsonDocument json = JsonDocument.Parse(run.Answers);
            return json.RootElement.GetProperty("figures").GetProperty("dead_travel_worn").GetProperty("value").GetDouble();
        }
    }

    [Theory]
    [InlineData("breaks", "--drop", "250 g")]
    [InlineData("breaks", "--height", "1 m", "--drop", "-2 g")]
    [InlineData("breaks", "--height", "1 kg", "--drop", "2 g")]
    [InlineData("lasts", "--material", "petg-alon")]
    [InlineData("grip", "--worn-days", "-1")]
    public void Refuses_what_it_cannot_use(string verb, params string[] options)
    {
        Started run = Started.Run([verb, Started.Demo, .. options]);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains("allowed:", run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Reads_a_history_and_says_where_it_is_wrong()
    {
        using Folder folder = new();
        string hand = File.ReadAllText(Started.Demo) + "\n[use.history]\nfile = \"day.csv\"\ndays = 1\nobject = \"mug\"\n";
        File.WriteAllText(folder["hand.toml"], hand);
        Started missing = Started.Run("lasts", folder["hand.toml"]);
        Assert.Equal(2, missing.Code);
        Assert.Contains("day.csv", missing.Talk, StringComparison.Ordinal);

        File.WriteAllText(folder["day.csv"], "moment [N·m]\n0\n2\n0\n1.5\nlots\n");
        Started wrong = Started.Run("lasts", folder["hand.toml"]);
        Assert.Equal(2, wrong.Code);
        Assert.Contains("day.csv:6:1", wrong.Talk, StringComparison.Ordinal);

        File.WriteAllText(folder["day.csv"], "moment [N·m]\n0\n2\n0\n1.5\n0.2\n");
        Started read = Started.Run("lasts", folder["hand.toml"]);
        Assert.Equal(0, read.Code);
        Assert.Contains("cycles counted in the history", string.Join(' ', read.Answers.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }
}
