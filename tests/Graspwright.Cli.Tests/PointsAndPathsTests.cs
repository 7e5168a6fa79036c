using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class PointsAndPathsTests
{
    [Theory]
    [InlineData("points.csv")]
    [InlineData("points.dxf")]
    public void Takes_points_out_and_back_without_a_change(string name)
    {
        using Folder folder = new();
        string hand = folder.Write("hand.toml", File.ReadAllText(Started.Demo));
        Assert.Equal(0, Started.Run("points", hand, "--write", folder[name]).Code);

        Started read = Started.Run("points", hand, "--read", folder[name]);
        Assert.Equal((0, ""), (read.Code, read.Talk));
        Assert.Contains("No point moved", read.Answers, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(Started.Demo), File.ReadAllText(hand));
    }

    [Fact]
    public void Lists_what_moved_and_keeps_the_comments()
    {
        using Folder folder = new();
        string hand = folder.Write("hand.toml", File.ReadAllText(Started.Demo));
        Started.Run("points", hand, "--write", folder["points.csv"]);
        string points = File.ReadAllText(folder["points.csv"]);
        Assert.Contains("rail rest,61,30\n", points, StringComparison.Ordinal);
        File.WriteAllText(folder["points.csv"], points.Replace("rail rest,61,30\n", "rail rest,61,31.5\n", StringComparison.Ordinal));

        Started read = Started.Run("points", hand, "--read", folder["points.csv"], "--json");

        Assert.Equal((0, ""), (read.Code, read.Talk));
        using JsonDocument json = JsonDocument.Parse(read.Answers);
        JsonElement row = Assert.Single(json.RootElement.GetProperty("tables").GetProperty("moved").GetProperty("rows").EnumerateArray());
        Assert.Equal(("rail rest", 1.5), (row[0].GetString(), row[5].GetDouble()));
        Assert.Equal(
            File.ReadAllText(Started.Demo).Replace("rest = [\"61 mm\", \"30 mm\"]", "rest = [\"61 mm\", \"31.5 mm\"]", StringComparison.Ordinal),
            File.ReadAllText(hand));
    }

    [Fact]
    public void Refuses_points_that_cannot_be_used()
    {
        using Folder folder = new();
        string hand = folder.Write("hand.toml", File.ReadAllText(Started.Demo));
        string[][] wrong =
        [
            ["--write", folder["points.txt"]],
            ["--read", folder["missing.csv"]],
            ["--read", folder.Write("words.csv", "not a table")],
            ["--read", folder.Write("words.dxf", "not a drawing")],
            ["--read", folder.Write("elbow.csv", "name,x_mm,y_mm\nelbow,1,2\n")],
            [],
            ["--read", folder["a.csv"], "--write", folder["b.csv"]],
        ];
        Assert.All(wrong, options =>
        {
            Started run = Started.Run(["points", hand, .. options]);
            Assert.Equal((2, ""), (run.Code, run.Answers));
            Assert.NotEmpty(run.Talk);
        });
        Assert.Equal(File.ReadAllText(Started.Demo), File.ReadAllText(hand));
    }

    [Fact]
    public void Shows_and_sets_a_value_by_its_path()
    {
        using Folder folder = new();
        string hand = folder.Write("hand.toml", File.ReadAllText(Started.Demo));
        Assert.Equal("rail.travel = 24 mm\n", Started.Run("show", hand, "rail.travel").Answers);

        Assert.Equal("rail.travel: 24 mm is now 23.5 mm\n", Started.Run("set", hand, "rail.travel", "23.5 mm").Answers);
        Assert.Equal(File.ReadAllText(Started.Demo).Replace("travel = \"24 mm\"", "travel = \"23.5 mm\"", StringComparison.Ordinal), File.ReadAllText(hand));

        Started near = Started.Run("show", hand, "rail.travle");
        Assert.Equal((2, ""), (near.Code, near.Answers));
        Assert.Contains("rail.travel", near.Talk, StringComparison.Ordinal);
        Assert.Equal(2, Started.Run("set", hand, "rail.travel", "23.5").Code);
        Assert.Equal(2, Started.Run("set", hand, "rail.travel", "-3 mm").Code);
    }

    [Fact]
    public void Prints_the_schema_of_the_hand_file()
    {
        Started run = Started.Run("schema");
        Assert.Equal((0, ""), (run.Code, run.Talk));
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.True(json.RootElement.GetProperty("properties").TryGetProperty("crank", out _));
    }

    [Fact]
    public void Draws_side_views_curves_and_the_loop()
    {
        using Folder folder = new();
        Started run = Started.Run("grip", Started.Demo, "--object", "mug", "--locks", "all free", "--effort", "squeeze", "--svg", folder["pictures"], "--at", "0", "--at", "20");

        Assert.Equal(0, run.Code);
        string[] names = [.. Directory.GetFiles(folder["pictures"]).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
        Assert.Equal(["mug-all-free-squeeze-curves.svg", "mug-all-free-squeeze-joints.svg", "mug-all-free-squeeze-loop.svg", "mug-all-free-squeeze-side.svg"], names);
        Assert.All(names, name => Assert.Equal("svg", System.Xml.Linq.XDocument.Load(Path.Combine(folder["pictures"], name)).Root!.Name.LocalName));
        Assert.Contains("20.0°", File.ReadAllText(Path.Combine(folder["pictures"], names[3])), StringComparison.Ordinal);
    }
}
