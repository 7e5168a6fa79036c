using System.Text.Json;

namespace Graspwright.Cli.Tests;

public sealed class JobsVerbTests
{
    [Fact]
    public void Answers_in_the_one_shape_with_a_sentence_first()
    {
        Started run = Started.Run("jobs", Started.Demo, "--json");
        Assert.Equal((0, ""), (run.Code, run.Talk));
        using JsonDocument json = JsonDocument.Parse(run.Answers);
        Assert.Equal("jobs", json.RootElement.GetProperty("verb").GetString());
        Assert.Equal(7, json.RootElement.GetProperty("figures").GetProperty("jobs_done").GetProperty("value").GetDouble());
        Assert.Equal(10, json.RootElement.GetProperty("tables").GetProperty("jobs").GetProperty("rows").GetArrayLength());
    }

    [Fact]
    public void Writes_a_table_and_a_picture_for_each_job()
    {
        using Folder folder = new();
        Started run = Started.Run("jobs", Started.Demo, "--csv", folder["jobs.csv"], "--svg", folder["pictures"]);
        Assert.Equal(0, run.Code);
        Assert.Equal(11, File.ReadAllLines(folder["jobs.csv"]).Length);
        Assert.Equal(10, Directory.GetFiles(folder["pictures"], "job-*.svg").Length);
    }

    [Theory]
    [InlineData("room", "Nothing meets over the whole travel")]
    [InlineData("thumb", "The thumb's pad:")]
    [InlineData("postures", "The hand as it is")]
    public void The_verbs_about_the_body_answer_on_the_demo_alone(string verb, string words)
    {
        Started run = Started.Run(verb, Started.Demo);
        Assert.Equal(0, run.Code);
        Assert.StartsWith(words, run.Answers, StringComparison.Ordinal);
        Assert.Contains("Cautions", run.Answers, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("load = \"9 kg\"", "load = \"90 N\"", "jobs.bucket.load", "kg")]
    [InlineData("load = \"9 kg\"", "load = 9", "jobs.bucket.load", "add the unit")]
    [InlineData("as = \"hook bar\"", "as = \"plate\"", "jobs.bucket.as", "hook bar")]
    [InlineData("object = \"tin\"", "object = \"tinn\"", "jobs.\"tin of paint\".object", "did you mean tin?")]
    [InlineData("material = \"silicone\"", "material = \"silicon\"", "pads.material", "silicone")]
    [InlineData("[closing_lock]  ", "[closing_lok]  ", "closing_lok", "did you mean closing_lock?")]
    [InlineData("pull = \"90 N\"", "pull = \"90 N·m\"", "jobs.\"grab rail\".pull", "N")]
    [InlineData("spread = \"20 %\"", "spread = \"120 %\"", "pads.spread", "at most 90 %")]
    public void Says_what_is_wrong_with_a_job(string good, string bad, string key, string words)
    {
        using Folder folder = new();
        Started run = Started.Run("jobs", folder.Changed(good, bad));
        Assert.Equal((2, ""), (run.Code, run.Answers));
        string line = run.Talk.Split('\n').First(l => l.Contains(key, StringComparison.Ordinal));
        Assert.Contains(words, line, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("Did you mean 'bucket'?", "jobs", "--job", "bukcet")]
    [InlineData("a folder you may write to", "room", "--svg", "HAND")]
    public void Refuses_wrong_options(string words, params string[] args)
    {
        Started run = Started.Run([args[0], Started.Demo, .. args[1..].Select(a => a == "HAND" ? Started.Demo : a)]);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Contains(words, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_hand_has_no_jobs_and_is_told_how_to_name_one()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("new", folder["hand.toml"]).Code);
        Started run = Started.Run("jobs", folder["hand.toml"]);
        Assert.Equal(2, run.Code);
        Assert.Contains("[jobs.NAME]", run.Talk, StringComparison.Ordinal);
    }
}
