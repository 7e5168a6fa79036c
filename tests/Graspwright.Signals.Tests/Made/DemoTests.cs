using Graspwright.Signals.Made;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Sites;

namespace Graspwright.Signals.Tests.Made;

/// <summary>The demo's recordings are made here; GRASPWRIGHT_WRITE_DEMO=1 writes them, otherwise they are compared.</summary>
public sealed class DemoTests
{
    private static readonly string[] Gestures = ["fist", "spread", "thumb", "turn"];

    private static readonly Muscle[] Muscles =
    [
        new("fist", 34, 30, 260e-6), new("spread", 96, 34, 240e-6), new("thumb", 38, 66, 220e-6), new("turn", 104, 70, 250e-6),
        new("wrist driving", 66, 24, 110e-6),
    ];

    [Fact]
    public void The_recordings_of_the_demo_are_those_made_here()
    {
        string folder = Path.Combine(Root(), "examples", "boatyard", "signals");
        foreach ((string name, byte[] bytes) in Files())
        {
            string file = Path.Combine(folder, name);
            if (Environment.GetEnvironmentVariable("GRASPWRIGHT_WRITE_DEMO") == "1")
            {
                File.WriteAllBytes(file, bytes);
            }

            Assert.True(bytes.AsSpan().SequenceEqual(File.ReadAllBytes(file)), $"{name} differs");
        }
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Files()
    {
        Scene morning = new()
        {
            Seed = 11,
            RateHertz = 1000,
            Sites = Worn(0),
            Muscles = Muscles,
            Marks = Turns(3, 3),
            Lifted = [new("hollow", 18.6, 20.4)],
        };
        yield return ("morning.edf", EdfWriter.Write(Making.Of(morning)));
        yield return ("noon.edf", EdfWriter.Write(Making.Of(morning with { Seed = 12, Sites = Worn(5), Marks = Turns(2, 0), Lifted = [] })));
        yield return ("map.edf", EdfWriter.Write(Making.Of(morning with { Seed = 13, RateHertz = 100, Envelope = true, VoltsPerCount = 0.1e-6, Sites = Grid(), Marks = Turns(2, 0), Lifted = [] })));
        yield return ("wear.edf", EdfWriter.Write(Making.Of(morning with { Seed = 14, RateHertz = 10, Envelope = true, VoltsPerCount = 0.1e-6, Marks = Day(), Lifted = [], DriftPerHour = 0.3 })));
    }

    /// <summary>The four pairs as worn, slipped along the arm by so many mm.</summary>
    private static Site[] Worn(double slip) =>
        [new("ridge", 36 + slip, 32, 90, 20), new("hollow", 94 + slip, 32, 90, 20), new("elbow", 36 + slip, 68, 90, 20), new("rim", 102 + slip, 68, 90, 20)];

    private static Site[] Grid() =>
        [.. from row in Enumerable.Range(0, 4) from column in Enumerable.Range(0, 5) select new Site($"{(char)('A' + row)}{column + 1}", 22 + 24 * column, 20 + 20 * row, 90, 20)];

    /// <summary>Each gesture so many times; from a turn on with the arm overhead; between them rest, sometimes with the wrist driving.</summary>
    private static List<Mark> Turns(int times, int overheadFrom)
    {
        List<Mark> marks = [];
        double t = 0;
        for (int r = 1; r <= times; r++)
        {
            foreach (string gesture in Gestures)
            {
                marks.Add(new(t, t + 0.8, gesture == "thumb" ? "rest/wrist driving" : "rest"));
                marks.Add(new(t + 0.8, t + 2, r == overheadFrom ? $"{gesture}/arm overhead" : gesture));
                t += 2;
            }
        }

        return marks;
    }

    private static List<Mark> Day()
    {
        List<Mark> marks = [];
        for (double t = 0; t < 1200; t += 6)
        {
            marks.Add(new(t, t + 4, "rest"));
            marks.Add(new(t + 4, t + 6, "rest/wrist driving"));
        }

        return marks;
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
