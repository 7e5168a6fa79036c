using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class GripVerbTests
{
    [Fact]
    public void Answers_in_a_sentence_with_findings_table_and_cautions()
    {
        Started run = Started.Run("grip", Started.Demo);

        Assert.Equal((0, ""), (run.Code, run.Talk));
        Assert.Matches("^On the 60 mm mug this hand touches at [0-9.]+°.* and grips with [0-9.]+ N \\([0-9.]+ kgf\\) at\\s+your\\s+all-day\\s+effort", run.Answers);
        Assert.Contains("hold ring and little", run.Answers, StringComparison.Ordinal);
        Assert.Contains("not a rated lifting device", run.Answers, StringComparison.Ordinal);
        Assert.Contains("Not modelled", run.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Prints_the_one_result_shape_as_json()
    {
        Started run = Started.Run("grip", Started.Demo, "--json", "--object", "mug", "--object", "rail", "--locks", "all free", "--effort", "squeeze");

        Assert.Equal((0, ""), (run.Code, run.Talk));
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        JsonElement root = json.RootElement;
        Assert.Equal(["tool", "verb", "hand", "answer", "situation", "figures", "findings", "situations", "tables", "cautions"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal("mug/all free", root.GetProperty("situation").GetString());
        Assert.Equal(["mug", "rail"], root.GetProperty("situations").EnumerateArray().Select(s => s.GetProperty("object").GetString()));
        JsonElement grip = root.GetProperty("figures").GetProperty("grip_force");
        Assert.Equal("N", grip.GetProperty("unit").GetString());
        Assert.True(grip.GetProperty("value").GetDouble() > 0);
        Assert.All(root.GetProperty("figures").EnumerateObject(), f =>
            Assert.True(f.Value.GetProperty("value").ValueKind == JsonValueKind.Number || f.Value.TryGetProperty("why", out _), f.Name));
        Assert.All(root.GetProperty("findings").EnumerateArray(), f =>
            Assert.Contains(f.GetProperty("verdict").GetString(), (string[])["good", "tight", "fails", "not known"]));
        JsonElement closing = root.GetProperty("situations")[0].GetProperty("tables").GetProperty("closing");
        int columns = closing.GetProperty("columns").GetArrayLength();
        Assert.All(closing.GetProperty("rows").EnumerateArray(), row => Assert.Equal(columns, row.GetArrayLength()));
    }

    [Fact]
    public void Gives_the_same_bytes_every_time_and_under_a_comma_culture()
    {
        string[] args = ["grip", Started.Demo, "--json", "--object", "plate"];
        Started first = Started.Run(args), again = Started.Run(new() { ["LANG"] = "de_DE.UTF-8", ["LC_ALL"] = "de_DE.UTF-8", ["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "0" }, args);
        Assert.Equal(0, first.Code);
        Assert.Equal(first.Answers, again.Answers);
    }

    [Fact]
    public void Writes_every_state_as_csv()
    {
        using Folder folder = new();
        Started run = Started.Run("grip", Started.Demo, "--object", "rail", "--locks", "all free", "--csv", folder["states.csv"]);

        Assert.Equal(0, run.Code);
        Assert.Contains("states.csv", run.Talk, StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(folder["states.csv"]);
        Assert.StartsWith("object,locks,effort,leg,wrist [deg],", lines[0], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.Equal(lines[0].Split(',').Length, line.Split(',').Length));
        Assert.Contains(lines, l => l.StartsWith("rail,all free,squeeze,opening,", StringComparison.Ordinal));
        Assert.Equal(["states.csv"], folder.Names);
    }

    [Fact]
    public void Compares_the_three_pairings_and_says_which_need_stacked_bars()
    {
        Started run = Started.Run("grip", Started.Demo, "--object", "mug", "--locks", "all free", "--effort", "squeeze", "--pairings", "--json");

        Assert.Equal(0, run.Code);
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        JsonElement[] pairings = [.. json.RootElement.GetProperty("findings").EnumerateArray().Where(f => f.GetProperty("key").GetString() == "pairing")];
        Assert.Equal(["good", "tight", "tight"], pairings.Select(p => p.GetProperty("verdict").GetString()));
        Assert.Equal(3, json.RootElement.GetProperty("tables").GetProperty("pairings").GetProperty("rows").GetArrayLength());
        Assert.Contains("pairings", json.RootElement.GetProperty("answer").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_the_other_objects_where_one_lies_in_a_finger()
    {
        using Folder folder = new();
        string hand = folder.Changed("[objects.tin]", "[objects.keg]\nshape = \"cylinder\"\ndiameter = \"150 mm\"\nstation = \"110 mm\"\n\n[objects.tin]");

        Started run = Started.Run("grip", hand, "--json", "--effort", "all-day", "--locks", "all free");
        Assert.Equal(0, run.Code);
        Assert.Contains("keg", run.Talk, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        JsonElement keg = json.RootElement.GetProperty("situations").EnumerateArray().Single(s => s.GetProperty("object").GetString() == "keg");
        Assert.Equal("object_overlaps", keg.GetProperty("findings")[0].GetProperty("key").GetString());

        Started alone = Started.Run("grip", hand, "--object", "keg");
        Assert.Equal((2, ""), (alone.Code, alone.Answers));
        Assert.Contains("mm inside", alone.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hand_that_is_useless_is_an_answer_with_findings()
    {
        using Folder folder = new();
        string hand = folder.Changed("travel = \"38 deg\"", "travel = \"4 deg\"");
        Started run = Started.Run("grip", hand, "--object", "tin", "--locks", "all free");
        Assert.Equal((0, ""), (run.Code, run.Talk));
        Assert.Contains("touches nothing", run.Answers, StringComparison.Ordinal);
        Assert.Contains("Try: ", run.Answers, StringComparison.Ordinal);
    }
}
