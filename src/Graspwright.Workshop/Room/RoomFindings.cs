using System.Globalization;
using Graspwright.Mechanics.Room;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Room;

/// <summary>What a sweep and the places of the knuckles say.</summary>
internal static class RoomFindings
{
    private const double SoundAway = 0.006; // metres from the sound knuckle that go unseen in a glove: common practice, no source

    public static IEnumerable<Finding> Of(Hand.HandModel hand, Hand.HandRoom room, IReadOnlyList<RoomSwept> sweeps)
    {
        foreach ((RoomSwept at, NearPair pair) in Worst(sweeps).Where(p => p.Pair.Gap < room.LeastGap))
        {
            yield return Gap(room, at, pair);
        }

        if (!Worst(sweeps).Any(p => p.Pair.Gap < room.LeastGap) && Worst(sweeps).FirstOrDefault() is { Pair: { } nearest } first)
        {
            yield return Gap(room, first.At, nearest);
        }

        foreach (Finding finding in OnPalm(sweeps))
        {
            yield return finding;
        }

        SweepResult highest = sweeps.Select(s => s.Sweep).MaxBy(s => s.Height)!;
        if (room.MostHeight is { } most)
        {
            yield return new("height", highest.HighestPart, Verdicts.Of((most - highest.Height) / most),
                $"The {highest.HighestPart} stands {Mm(highest.Height)} over the back of the shell at {Angles.Text(highest.HeightTheta)}; {Mm(most)} are allowed, for sleeves and pockets.",
                "Lower the fulcrum and the rail together, or shorten the crank's arms in one ratio.")
            { Figure = 1000 * highest.Height, Limit = 1000 * most, Unit = "mm", Margin = (most - highest.Height) / most };
        }

        foreach (Finding finding in Knuckles(hand, room))
        {
            yield return finding;
        }
    }

    /// <summary>Each pair once, at its nearest of all lock patterns.</summary>
    private static List<(RoomSwept At, NearPair Pair)> Worst(IReadOnlyList<RoomSwept> sweeps) =>
        [.. sweeps.SelectMany(s => s.Sweep.Pairs.Select(p => (At: s, Pair: p))).GroupBy(p => (p.Pair.First, p.Pair.Second)).Select(g => g.MinBy(p => p.Pair.Gap)).OrderBy(p => p.Pair.Gap)];

    private static Finding Gap(Hand.HandRoom room, RoomSwept at, NearPair pair)
    {
        double least = Math.Max(room.LeastGap, 1e-6), margin = (pair.Gap - least) / least;
        string place = string.Create(CultureInfo.InvariantCulture, $"at x {1000 * pair.Place.X:0}, y {1000 * pair.Place.Y:0}, {1000 * pair.Place.Z:0} mm toward the thumb");
        string reason = pair.ClashTheta is { } theta
            ? $"The {pair.First} meets the {pair.Second} at {Angles.Text(theta)} of wrist{Rooming.With(at.Locks)} and overlaps it by up to {Mm(-pair.Gap)} {place}."
            : $"The {pair.First} passes the {pair.Second} with {Mm(pair.Gap)} {place} at {Angles.Text(pair.GapTheta)}{Rooming.With(at.Locks)}; {Mm(room.LeastGap)} are wanted.";
        return new("clearance", $"{pair.First} and {pair.Second}", Verdicts.Of(margin), reason,
            pair.Second.StartsWith("shell", StringComparison.Ordinal) ? "Raise the part, cut the shell back, or shorten the arm that sweeps there." : "Splay the fingers a little more, make the parts thinner, or set the bars further apart.")
        { Figure = 1000 * pair.Gap, Limit = 1000 * room.LeastGap, Unit = "mm", Margin = margin };
    }

    /// <summary>The first finger that comes down on the palm or a stump, or the one that comes nearest.</summary>
    private static IEnumerable<Finding> OnPalm(IReadOnlyList<RoomSwept> sweeps)
    {
        (RoomSwept At, NearPair Pair)[] all = [.. sweeps.SelectMany(s => s.Sweep.OnPalm.Select(p => (At: s, Pair: p)))];
        if (all.Length == 0)
        {
            yield break;
        }

        (RoomSwept at, NearPair pair) = all.OrderBy(p => p.Pair.ClashTheta ?? double.PositiveInfinity).ThenBy(p => p.Pair.Gap).First();
        string with = Rooming.With(at.Locks);
        yield return pair.ClashTheta is { } theta
            ? new("on_palm", pair.First, Verdict.Tight, $"With nothing held the {pair.First} comes down on the {pair.Second} at {Angles.Text(theta)} of wrist{with}. From there a closing in the air is wrong: the finger stands on the palm.",
                "Hold something when the wrist goes further, or let the crank's stop end the closing there. Pad the tip: it presses on skin that may not feel it.")
            { Figure = double.RadiansToDegrees(theta), Unit = "deg" }
            : new("on_palm", pair.First, Verdict.Good, $"With nothing held no finger comes down on the palm or a stump; nearest is the {pair.First}, {Mm(pair.Gap)} from the {pair.Second} at {Angles.Text(pair.GapTheta)}{with}.", "Nothing.") { Figure = 1000 * pair.Gap, Unit = "mm" };
    }

    private static IEnumerable<Finding> Knuckles(Hand.HandModel hand, Hand.HandRoom room)
    {
        foreach (Hand.NamedPlace stump in room.Stumps)
        {
            Hand.Finger finger = hand.Fingers.First(f => f.Name == stump.Finger);
            double needed = Rooming.Needed(room, stump), spare = finger.Knuckle.X - needed, layers = needed - stump.Place.X;
            if (spare < 0.1 * layers)
            {
                double margin = spare / layers;
                yield return new("knuckle_room", stump.Finger, Verdicts.Of(margin),
                    $"The {stump.Finger} knuckle lies {Mm(finger.Knuckle.X - stump.Place.X)} before its stump's end; liner, shell, air and base take {Mm(layers)}{(spare < 0 ? $", {Mm(-spare)} more than there is" : "")}.",
                    "Move the knuckle out, or use a thinner liner, shell or base.")
                { Figure = 1000 * finger.Knuckle.X, Limit = 1000 * needed, Unit = "mm", Margin = margin };
            }
        }

        foreach (Hand.NamedPlace sound in room.SoundKnuckles)
        {
            Hand.Finger finger = hand.Fingers.First(f => f.Name == sound.Finger);
            double dx = finger.Knuckle.X - sound.Place.X, dy = finger.Knuckle.Y - sound.Place.Y, away = double.Hypot(dx, dy);
            if (away > 0.9 * SoundAway)
            {
                yield return new("sound_hand", sound.Finger, Verdicts.Of((SoundAway - away) / SoundAway),
                    $"The {sound.Finger} knuckle lies {Mm(Math.Abs(dx))} {(dx > 0 ? "further out" : "further back")} and {Mm(Math.Abs(dy))} {(dy > 0 ? "higher" : "lower")} than on the sound hand; {Mm(SoundAway)} go unseen (common practice, no source).",
                    "Shorten the base or the proximal segment, so that the fingertips at least end where the sound hand's do.")
                { Figure = 1000 * away, Limit = 1000 * SoundAway, Unit = "mm", Margin = (SoundAway - away) / SoundAway };
            }
        }
    }

    private static string Mm(double metres) => string.Create(CultureInfo.InvariantCulture, $"{1000 * metres:0.0} mm");
}
