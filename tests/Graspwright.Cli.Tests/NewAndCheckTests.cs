namespace Graspwright.Cli.Tests;

public sealed class NewAndCheckTests
{
    [Fact]
    public void Writes_a_starter_that_passes_the_check_and_can_be_gripped()
    {
        using Folder folder = new();
        Started written = Started.Run("new", folder["hand.toml"]);
        Assert.Equal((0, ""), (written.Code, written.Talk));
        Assert.Equal(["hand.toml"], folder.Names);

        Started check = Started.Run("check", folder["hand.toml"]);
        Assert.Equal((0, ""), (check.Code, check.Talk));
        Assert.Contains("guessed, measure it", check.Answers, StringComparison.Ordinal);

        Assert.Equal(0, Started.Run("grip", folder["hand.toml"]).Code);
    }

    [Fact]
    public void Does_not_overwrite_a_file()
    {
        using Folder folder = new();
        string file = folder.Write("hand.toml", "mine");
        Started run = Started.Run("new", file);
        Assert.Equal((2, ""), (run.Code, run.Answers));
        Assert.Equal("mine", File.ReadAllText(file));
        Assert.Equal(["hand.toml"], folder.Names);
    }

    [Fact]
    public void The_demo_hand_passes_the_check()
    {
        Started run = Started.Run("check", Started.Demo);
        Assert.Equal((0, ""), (run.Code, run.Talk));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("--version")]
    [InlineData("grip", "--help")]
    public void Helps_on_standard_output(params string[] args)
    {
        Started run = Started.Run(args);
        Assert.Equal((0, ""), (run.Code, run.Talk));
        Assert.NotEmpty(run.Answers);
    }

    [Fact]
    public void Says_so_when_the_answer_cannot_be_written()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "No device that is always full here.");
        Started run = Started.Through("/bin/sh", "-c", $"exec dotnet \"{Started.Dll}\" check \"{Started.Demo}\" > /dev/full");
        Assert.Equal(3, run.Code);
        Assert.Contains("cannot be written", run.Talk, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_of_a_named_file_that_is_not_there_and_where_it_is_named()
    {
        using Folder folder = new();
        Started run = Started.Run("check", folder.Changed("slot = 0.03", "slot = 0.031"));
        Assert.Equal(0, run.Code);
        Assert.Contains("not there", run.Answers, StringComparison.Ordinal);
        Assert.Matches(@"Line \d+, column \d+: files\.\S+", run.Answers);
        Assert.DoesNotContain("not there", Started.Run("check", Started.Demo).Answers, StringComparison.Ordinal);
    }
}
