using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Proof;

public sealed class ProvingTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();

    [Fact]
    public void Loads_are_those_of_the_hand_s_own_runs()
    {
        (Answer? answer, IReadOnlyList<ViceTest> tests, IReadOnlyList<InputError> errors) = Proving.Make(Boatyard, "hand.toml");
        Assert.Empty(errors);
        RunResult[] runs = [.. Gripping.Answer(new(Boatyard)).Cases.Select(c => c.Reading.Run)];
        Assert.Equal(runs.Max(r => r.Closing.Max(s => s[TraceLayout.Grip])), Test("squeezed").Peak, 1e-9);
        Assert.Equal(runs.Max(r => r.Closing.Max(s => s[TraceLayout.Tau])), Test("gripped").Peak, 1e-9);
        Assert.Equal(runs.SelectMany(r => r.Peaks).Where(p => p.Subject == "pull link").Max(p => p.Newtons), Test("pull_link").Peak, 1e-9);
        Assert.Equal(["lock_ring", "lock_little", "lock_index"], tests.Where(t => t.Key.StartsWith("lock_", StringComparison.Ordinal)).Select(t => t.Key));
        Assert.All(tests, t => Assert.Equal((1.5 * t.Peak, 2 * t.Peak), (t.Low, t.High)));
        Assert.All(answer!.Figures, f => Assert.Equal(f.Value!.Value, FormulaText.Evaluate(f.Working!.Formula, f.Working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal)), 1e-9));

        ViceTest Test(string key) => tests.Single(t => t.Key == key);
    }

    [Fact]
    public void A_heavier_hook_job_sets_the_hooked_load()
    {
        HandModel heavy = Boatyard with { Jobs = [Boatyard.Jobs[0] with { As = HeldAs.HookBar, Load = 40, Pull = 5, Acceleration = 0.5 }] };
        ViceTest hooked = Proving.Make(heavy, "hand.toml").Tests.Single(t => t.Key == "hooked");
        Assert.Equal(40 * 9.80665 * 1.5 + 5, hooked.Peak, 1e-9);
        Assert.Contains("job", hooked.From, StringComparison.Ordinal);
        Assert.Equal(hooked.High / 9.80665, hooked.HighKilograms, 1e-12);
    }

    [Fact]
    public void Cautions_name_what_must_never_be_done()
    {
        string all = string.Join(' ', Proving.Cautions);
        foreach (string words in (string[])["Never on an arm", "rotating machines", "break away", "consent", "responsible person", "rules for custom devices"])
        {
            Assert.Contains(words, all, StringComparison.Ordinal);
        }
    }
}
