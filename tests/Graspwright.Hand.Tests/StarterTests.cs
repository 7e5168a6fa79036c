namespace Graspwright.Hand.Tests;

public sealed class StarterTests
{
    [Fact]
    public void Reads_without_errors()
    {
        HandReading reading = HandFile.Parse(Starter.Text, "hand.toml");
        Assert.Empty(reading.Errors);
        Assert.NotNull(reading.Hand);
        Assert.Equal(["index", "middle", "ring", "little"], reading.Hand.Fingers.Select(f => f.Name));
    }

    [Fact]
    public void Lists_every_guess_with_its_words()
    {
        HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
        Assert.Contains(hand.Guesses, g => g is { Path: "wrist.all_day_share", ValueText: "18 %", SourceKey: "smit-2010" });
        Assert.Contains("guessed, measure it", hand.Guesses[0].Words, StringComparison.Ordinal);
        Assert.Contains(hand.Guesses, g => g.Path == "fingers.all.pad_stiffness");
        Assert.DoesNotContain(hand.Guesses, g => g.Path == "wrist.travel");
    }
}
