using Graspwright.Signals.Made;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Tests.Made;

/// <summary>Invented scenes that several tests use.</summary>
internal static class Scenes
{
    public static readonly string[] Gestures = ["rest", "fist", "spread", "thumb", "turn"];

    public static Scene Four(ulong seed = 1) => new()
    {
        Seed = seed,
        RateHertz = 1000,
        Sites = [new("ridge", 0, 0, 90, 20), new("hollow", 30, 0, 90, 20), new("elbow", 0, 35, 90, 20), new("rim", 30, 35, 90, 20)],
        Muscles = [new("fist", 0, 0, 300e-6), new("spread", 30, 0, 300e-6), new("thumb", 0, 35, 300e-6), new("turn", 30, 35, 300e-6)],
        Marks = Turns(4),
    };

    /// <summary>Each gesture for 1.5 s with 1 s of rest between, several times over.</summary>
    public static IReadOnlyList<Mark> Turns(int times)
    {
        List<Mark> marks = [];
        double t = 0;
        for (int r = 0; r < times; r++)
        {
            foreach (string gesture in Gestures.Skip(1))
            {
                marks.Add(new(t, t + 1, "rest"));
                marks.Add(new(t + 1, t + 2.5, gesture));
                t += 2.5;
            }
        }

        return marks;
    }
}
