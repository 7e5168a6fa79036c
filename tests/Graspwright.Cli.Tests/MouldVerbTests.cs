using System.Text.Json;

namespace Graspwright.Cli.Tests;

/// <summary>The verbs of liner and copies as a maker types them.</summary>
public sealed class MouldVerbTests
{
    [Theory]
    [InlineData("liner", "Weigh ")]
    [InlineData("clock", "In a room of 17 °C")]
    [InlineData("off", "On its way off")]
    [InlineData("copies", "Take ")]
    public void Answers_on_the_demo_with_a_sentence_first(string verb, string begins)
    {
        Started run = Started.Run(verb, Started.Demo);
        Assert.Equal(0, run.Code);
        Assert.StartsWith(begins, run.Answers, StringComparison.Ordinal);
        Assert.Contains("Cautions", run.Answers, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Started.Run(verb, Started.Demo, "--json").Answers);
        Assert.Equal(verb, json.RootElement.GetProperty("verb").GetString());
        Assert.NotEmpty(json.RootElement.GetProperty("figures").EnumerateObject());
    }

    [Theory]
    [InlineData("liner")]
    [InlineData("clock")]
    [InlineData("off")]
    [InlineData("copies")]
    public void Says_what_to_add_to_a_hand_without_a_liner(string verb)
    {
        using Folder folder = new();
        Started.Run("new", folder["hand.toml"]);
        Started run = Started.Run(verb, folder["hand.toml"]);
        Assert.Equal(2, run.Code);
        Assert.Contains("a section [liner.putty] with the label of the tub", run.Talk, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("at = \"23 °C\"", "", "minutes without a temperature")]
    [InlineData("work_time = \"3.5 min\"", "work_time = \"30 min\"", "not before the set time")]
    [InlineData("ratio_b = 1", "ratio_b = 0", "above 0")]
    [InlineData("humidity = \"65 %\"", "freezer = \"-80 °C\"", "kitchen freezer")]
    public void Explains_a_bad_label(string old, string replacement, string words)
    {
        using Folder folder = new();
        Started run = Started.Run("clock", folder.Changed(old, replacement));
        Assert.Equal(2, run.Code);
        Assert.Contains(words, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Writes_its_files()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("liner", Started.Demo, "--csv", folder["a.csv"], "--pdf", folder["a.pdf"]).Code);
        Assert.Equal(0, Started.Run("clock", Started.Demo, "--csv", folder["b.csv"], "--pdf", folder["b.pdf"], "--svg", folder["p"]).Code);
        Assert.Equal(0, Started.Run("off", Started.Demo, "--csv", folder["c.csv"], "--svg", folder["c.svg"]).Code);
        Assert.Equal(0, Started.Run("copies", Started.Demo, "--csv", folder["d.csv"], "--pdf", folder["d.pdf"]).Code);
        Assert.Equal(["a.csv", "a.pdf", "b.csv", "b.pdf", "c.csv", "c.svg", "d.csv", "d.pdf", "p"], folder.Names);
        Assert.StartsWith("place on the limb [mm],along the sheet [mm]", File.ReadAllText(folder["a.csv"]), StringComparison.Ordinal);
    }
}
