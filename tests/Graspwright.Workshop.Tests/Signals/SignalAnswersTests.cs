using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Signals;

namespace Graspwright.Workshop.Tests.Signals;

public sealed class SignalAnswersTests
{
    private static readonly HandModel Hand = MadeHand.Boatyard();

    private static IEnumerable<Answer> Answers =>
        [ContactsAnswer.Answer(Hand, MadeHand.File).Answer!, ThresholdsAnswer.Answer(Hand, MadeHand.File).Answer!, SitesAnswer.Answer(Hand, MadeHand.File).Answer!];

    [Fact]
    public void Every_printed_formula_gives_the_printed_value_on_its_printed_inputs()
    {
        int count = 0;
        foreach (Figure figure in Answers.SelectMany(a => a.Figures))
        {
            Assert.True(figure.Value is null == figure.Why is not null, figure.Key);
            if (figure.Value is { } value)
            {
                double worked = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
                Assert.Equal(value, worked, 1e-9 * Math.Max(1, Math.Abs(value)));
                Assert.True(figure.Low is null || figure.Low <= value && value <= figure.High, figure.Key);
                count++;
            }
        }

        Assert.True(count > 20, $"{count}");
    }

    [Fact]
    public void Says_in_the_sentence_what_the_demo_is_about()
    {
        string[] sentences = [.. Answers.Select(a => a.Sentence)];
        Assert.StartsWith("3 of 4 channels stay connected; not hollow. The amplifiers give the raw signal.", sentences[0], StringComparison.Ordinal);
        Assert.StartsWith("With these levels all 19 gestures act", sentences[1], StringComparison.Ordinal);
        Assert.StartsWith("Of 20 mapped places", sentences[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Makes_no_claim_about_false_activations_without_wear()
    {
        HandModel brief = Hand with { Signals = Hand.Signals! with { Recordings = [.. Hand.Signals.Recordings.Where(r => !r.IsWear)] } };
        Answer answer = ThresholdsAnswer.Answer(brief, MadeHand.File).Answer!;
        Assert.DoesNotContain(answer.Figures, f => f.Key == "false_activations");
        Assert.Equal(Verdict.NotKnown, answer.Findings.Single(f => f.Key == "false_activations").Verdict);
    }

    [Fact]
    public void Sees_swapped_channels_and_wrong_kind()
    {
        MuscleSignals signals = Hand.Signals!;
        SignalChannel[] swapped = [signals.Channels[0] with { Gesture = "spread" }, signals.Channels[1] with { Gesture = "fist" }, .. signals.Channels.Skip(2)];
        Answer answer = ContactsAnswer.Answer(Hand with { Signals = signals with { Channels = swapped } }, MadeHand.File).Answer!;
        Assert.Equal(Verdict.Fails, answer.Findings.Single(f => f.Key == "channels_swapped").Verdict);
        Answer wrong = ContactsAnswer.Answer(Hand with { Signals = signals with { Kind = "envelope" } }, MadeHand.File).Answer!;
        Assert.Equal(Verdict.Tight, wrong.Findings.Single(f => f.Key == "signal_kind").Verdict);
    }

    [Fact]
    public void Decides_nothing_about_locks_that_the_maker_has_not_decided()
    {
        Finding[] locks = [.. ContactsAnswer.Answer(Hand, MadeHand.File).Answer!.Findings.Where(f => f.Key == "lock_unpowered")];
        Assert.Equal([Verdict.Good, Verdict.Good, Verdict.NotKnown], locks.Select(f => f.Verdict).Order());
        HandModel trap = Hand with { Locks = [new("trap", [new("ring", 0, true, null) { HoldsUnpowered = true }])] };
        Assert.Equal(Verdict.Fails, ContactsAnswer.Answer(trap, MadeHand.File).Answer!.Findings.Single(f => f.Key == "lock_unpowered").Verdict);
    }
}
