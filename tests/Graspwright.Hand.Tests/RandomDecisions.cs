namespace Graspwright.Hand.Tests;

/// <summary>Lists of changes and searches that pass every check, from a few random numbers.</summary>
internal static class RandomDecisions
{
    public static Decisions Of(string finger, double[] any)
    {
        string arm = HandPath.Join(HandPath.Join("fingers", finger), "pad_stiffness");
        return new()
        {
            Measures = any[0] > 0.3 ? ["jobs_done", "grip_force@mug/all free"] : [],
            Money = any[1] > 0.3 ? "EUR" : "",
            Changes =
            [
                new("softer, with \"quotes\"") { About = "two\nlines", Evenings = any[2], Edits = [new(arm, $"{(1 + (int)(9 * any[0])).ToString(System.Globalization.CultureInfo.InvariantCulture)} N/mm"), new("friction.pin", "0.12"), new("crank.fulcrum", "[\"20 mm\", \"21 mm\"]"), new("wrist.drive", "extension")] },
                new("rail") { Money = 12.5, WithoutSeconds = 86400 * any[1], NewHand = any[3] > 0.3, MockUp = "tape", Parts = [new("rail", "[rail]\nrest = [\"60 mm\", \"30 mm\"]\ntravel = \"20 mm\"\n")] },
            ],
            Searches = any[3] > 0.6 ? [] :
            [
                new("places")
                {
                    Seed = 7,
                    Evaluations = 1200,
                    Changes = ["rail"],
                    Free =
                    [
                        new("crank.fulcrum.x") { Dimension = Dimension.Length, From = 0.01 + any[0] / 100, To = 0.05, Step = any[1] > 0.3 ? 0.0005 : null },
                        new("friction.slot") { Dimension = Dimension.Number, From = 0, To = 0.1 + any[2] },
                        new("wrist.drive") { OneOf = ["flexion", "extension"] },
                        new("crank.stop") { Dimension = Dimension.Angle, OneOf = ["70 deg", "80 deg"] },
                    ],
                    Aims = [new("grip_force@mug", true), new("worst(shift_cost)", false)],
                    Limits = [new("wrist_left@mug", true, "3 deg"), new("jobs_done", true, "8"), new("peak_pin@mug", false, "300 N")],
                },
            ],
        };
    }
}
