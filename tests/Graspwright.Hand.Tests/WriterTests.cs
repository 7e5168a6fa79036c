using System.Text.Json;
using System.Text.Json.Serialization;
using CsCheck;

namespace Graspwright.Hand.Tests;

public sealed class WriterTests
{
    private static readonly JsonSerializerOptions Everything = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, WriteIndented = true };

    [Fact]
    public void Reads_back_every_hand_it_writes() =>
        RandomMould.On(RandomHands.Hand).Sample(hand => Assert.Equal(Content(hand), Content(Again(hand))), iter: 100);

    [Fact]
    public void Reads_back_the_starter_with_all_its_guesses()
    {
        HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
        Assert.Equal(Content(hand), Content(Again(hand)));
    }

    [Fact]
    public void Writes_a_guess_that_was_replaced_by_a_value()
    {
        HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
        HandModel measured = hand with { Wrist = hand.Wrist with { AllDayShare = 0.2 } };
        HandModel again = Again(measured);
        Assert.Equal(0.2, again.Wrist.AllDayShare);
        Assert.DoesNotContain(again.Guesses, g => g.Path == "wrist.all_day_share");
    }

    private static HandModel Again(HandModel hand)
    {
        string text = HandWriter.Write(hand);
        HandReading reading = HandFile.Parse(text, "hand.toml");
        Assert.True(reading.Errors.Count == 0, string.Join('\n', reading.Errors) + "\n" + text);
        return reading.Hand!;
    }

    /// <summary>Every value to the bit, the derived types of bars, couplings, joints and objects included.</summary>
    private static string Content(HandModel hand) => JsonSerializer.Serialize(hand, Everything)
        + string.Join('\n', hand.Fingers.Select(f => f.Joints)) + hand.Balance + string.Join('\n', hand.Objects);
}
