using System.Collections.Concurrent;
using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Variants;

/// <summary>The hands that a search may look at: from the values of what is free straight to the hand's records.</summary>
/// <remarks>
/// For each choice of words and changes the file is edited and read once, and each free number is followed through it: at
/// three values, to find which records it sets and how. From then on a hand is made without text. Before it is trusted the
/// short way is compared with the file on some designs by chance; where they differ, and for values that records do not
/// follow in proportion, every design goes through the file, which is slow and is said.
/// </remarks>
public sealed class HandVariants
{
    private const int Trials = 4;
    private const double Alike = 1e-12;

    private readonly HandEditor _editor;
    private readonly IReadOnlyList<FreeScale> _scales;
    private readonly IReadOnlyList<Change> _changes;
    private readonly ConcurrentDictionary<string, Lazy<Way>> _ways = [];

    private HandVariants(HandEditor editor, IReadOnlyList<FreeScale> scales, IReadOnlyList<Change> changes)
    {
        _editor = editor;
        _scales = scales;
        _changes = changes;
        Space = new([.. scales.Select(s => s.Parameter), .. changes.Select(_ => FreeParameter.Of(2))]);
    }

    /// <summary>What is free, as the search sees it: numbers in the unit of the file, then numbers of choices.</summary>
    public DesignSpace Space { get; }

    /// <summary>Path or name of everything that is free.</summary>
    public IReadOnlyList<string> Names => [.. _scales.Select(s => s.Free.Path), .. _changes.Select(c => c.Name)];

    /// <summary>Unit of each free value as the search sees it; empty for choices and plain numbers.</summary>
    public IReadOnlyList<string> Units => [.. _scales.Select(s => s.Unit), .. _changes.Select(_ => "")];

    /// <summary>The hand as it is, as near as the ranges allow.</summary>
    public double[] AsItIs => [.. _scales.Select(s => s.Nearest(_editor.Find(s.Free.Path)!)), .. _changes.Select(_ => 0.0)];

    /// <summary>Whether designs go through the file, which is slow.</summary>
    public bool ThroughTheFile => _ways.Values.Any(w => w.IsValueCreated && w.Value.Slow);

    /// <summary>Makes ready what a search may look at.</summary>
    /// <param name="editor">The file, sound.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="search">The search.</param>
    /// <param name="errors">Takes what is wrong: a path that names nothing, an end of a range that the file may not have.</param>
    /// <returns><see langword="null"/> where anything is wrong.</returns>
    public static HandVariants? Of(HandEditor editor, string file, DesignSearch search, List<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(editor);
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(errors);
        List<FreeScale> scales = [];
        foreach (FreeValue free in search.Free)
        {
            string key = HandPath.Join(HandPath.Join(HandPath.Join("search", search.Name), "free"), free.Path);
            if (editor.Find(free.Path) is not { } present)
            {
                errors.Add(Faults.At(editor, file, key, "a path that leads to no value of this hand", "the path of a value", editor.NearestPath(free.Path) is { } near ? $"Did you mean {near}?" : "Paths are listed in the hand file's page."));
                continue;
            }

            FreeScale scale = FreeScale.Of(free, present);
            scales.Add(scale);
            for (double at = scale.Parameter.Low; at <= scale.Parameter.High; at += scale.Free.OneOf.Count > 0 ? 1 : scale.Parameter.High - scale.Parameter.Low)
            {
                EditResult set = editor.Set(free.Path, scale.Text(at));
                errors.AddRange(set.Errors.Select(e => Faults.At(editor, file, key, $"{scale.Text(at)}, with which {(e.Key.Length > 0 ? e.Key : "the file")} would be {e.Found}", e.Allowed, "Narrow the range.")));
            }
        }

        Change[] changes = [.. editor.Reading.Hand!.Decisions.Changes.Where(c => search.Changes.Contains(c.Name))];
        return errors.Count > 0 || ChangeVariants.Of(editor, file, changes, errors) is null ? null : new(editor, scales, changes);
    }

    /// <summary>The hand of a design.</summary>
    /// <param name="design">Values as the search sees them.</param>
    /// <exception cref="InvalidDataException">The file cannot have these values together.</exception>
    public HandModel Hand(double[] design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Way way = WayOf(design);
        return way.Slow ? ByFile(design) : way.Make(design, _scales);
    }

    /// <summary>The file of a design, comments kept.</summary>
    /// <param name="design">Values as the search sees them.</param>
    public EditResult Edited(double[] design)
    {
        ArgumentNullException.ThrowIfNull(design);
        HandEditor editor = _editor;
        for (int c = 0; c < _changes.Count; c++)
        {
            if (design[_scales.Count + c] > 0 && ChangeVariants.Make(editor, _changes[c]) is var made)
            {
                if (made.Editor is null)
                {
                    return made;
                }

                editor = made.Editor;
            }
        }

        return Set(editor, Enumerable.Range(0, _scales.Count), design);
    }

    /// <summary>Each value of a design as the file writes it.</summary>
    /// <param name="design">Values as the search sees them.</param>
    public IReadOnlyList<string> Texts(double[] design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return [.. _scales.Select((s, i) => s.Text(design[i])), .. _changes.Select((_, c) => design[_scales.Count + c] > 0 ? "made" : "left")];
    }

    private EditResult Set(HandEditor editor, IEnumerable<int> which, double[] design)
    {
        foreach (int i in which)
        {
            EditResult set = editor.Set(_scales[i].Free.Path, _scales[i].Text(design[i]));
            if (set.Editor is null)
            {
                return set;
            }

            editor = set.Editor;
        }

        return new(editor, []);
    }

    private HandModel ByFile(double[] design) =>
        Edited(design) is { Editor.Reading.Hand: { } hand } ? hand : throw new InvalidDataException("the file cannot have these values together");

    private Way WayOf(double[] design)
    {
        string choice = string.Join(',', Enumerable.Range(0, design.Length).Where(i => i >= _scales.Count || !_scales[i].IsNumber).Select(i => (int)design[i]));
        return _ways.GetOrAdd(choice, _ => new(() => MakeWay(design))).Value;
    }

    private Way MakeWay(double[] design)
    {
        HandEditor editor = _editor;
        for (int c = 0; c < _changes.Count; c++)
        {
            editor = design[_scales.Count + c] > 0 ? ChangeVariants.Make(editor, _changes[c]).Editor ?? throw Together() : editor;
        }

        int[] words = [.. Enumerable.Range(0, _scales.Count).Where(i => !_scales[i].IsNumber)], numbers = [.. Enumerable.Range(0, _scales.Count).Where(i => _scales[i].IsNumber)];
        editor = Set(editor, words, design).Editor ?? throw Together();
        HandModel plain = editor.Reading.Hand!;
        List<(int Scale, IReadOnlyList<Followed> Places)> followed = [];
        foreach (int i in numbers)
        {
            if (Follow(editor, plain, _scales[i]) is not { } places)
            {
                return new(plain, [], Slow: true);
            }

            followed.Add((i, places));
        }

        // What sets more places goes first, so that a value for one finger wins over that for all.
        Way way = new(plain, [.. followed.OrderByDescending(f => f.Places.Count)], Slow: false);
        for (int k = 0; k < Trials; k++)
        {
            Chance chance = new(20260, k);
            double[] any = Space.Any(ref chance);
            for (int i = 0; i < any.Length; i++)
            {
                any[i] = i >= _scales.Count || !_scales[i].IsNumber ? design[i] : any[i];
            }

            if (Edited(any) is { Editor.Reading.Hand: { } byFile } && !Same(way.Make(any, _scales), byFile))
            {
                return way with { Slow = true };
            }
        }

        return way;
    }

    /// <summary>Which records a free number sets, and how; <see langword="null"/> where they do not follow it in proportion.</summary>
    private static List<Followed>? Follow(HandEditor editor, HandModel plain, FreeScale scale)
    {
        FreeParameter p = scale.Parameter;
        double[] at = [p.Low, p.Nearest(p.Low + 0.37 * (p.High - p.Low)), p.High];
        HandModel?[] hands = [.. at.Select(v => editor.Set(scale.Free.Path, scale.Text(v)).Editor?.Reading.Hand)];
        if (hands.Any(h => h is null))
        {
            return null;
        }

        if (scale.Free.Path is "crank.input_angle" or "crank.input_arm")
        {
            return [new([], 0, 0) { Turns = scale.Free.Path == "crank.input_angle" }];
        }

        ModelDifference[] places = [.. hands.SelectMany(h => ModelDifferences.Between(plain, h!)).DistinctBy(d => d.Place)];
        List<Followed> followed = [];
        foreach (ModelDifference place in places)
        {
            double[] si = [.. at.Select(scale.Si)], got = [.. hands.Select(h => ModelDifferences.At(h!, place.Steps) is double d ? d : double.NaN)];
            double slope = (got[2] - got[0]) / (si[2] - si[0]), start = got[0] - slope * si[0];
            if (si.AsSpan().SequenceEqual(got))
            {
                (slope, start) = (1, 0);
            }

            if (!(Math.Abs(start + slope * si[1] - got[1]) <= Alike * Math.Max(Math.Abs(got[1]), 1e-9)))
            {
                return null;
            }

            followed.Add(new(place.Steps, start, slope));
        }

        return followed;
    }

    private static bool Same(HandModel one, HandModel other) => ModelDifferences.Between(one, other).All(d =>
        d.Value is double b && ModelDifferences.At(one, d.Steps) is double a && Math.Abs(a - b) <= Alike * Math.Max(1e-6, Math.Abs(b)));

    private static InvalidDataException Together() => new("the file cannot have these choices together");

    /// <summary>A record that follows a free number: start + slope × SI value; or, without steps, the crank's input arm or its angle.</summary>
    private sealed record Followed(IReadOnlyList<object> Steps, double Start, double Slope)
    {
        public bool Turns { get; init; }
    }

    /// <summary>The short way from values to a hand, for one choice of words and changes.</summary>
    private sealed record Way(HandModel Plain, IReadOnlyList<(int Scale, IReadOnlyList<Followed> Places)> Numbers, bool Slow)
    {
        public HandModel Make(double[] design, IReadOnlyList<FreeScale> scales)
        {
            List<ModelDifference> values = [];
            HandModel hand = Plain;
            foreach ((int i, IReadOnlyList<Followed> places) in Numbers)
            {
                double si = scales[i].Si(design[i]);
                foreach (Followed place in places)
                {
                    if (place.Steps.Count > 0)
                    {
                        values.Add(new(place.Steps, place.Start + place.Slope * si));
                        continue;
                    }

                    Point input = hand.Crank.Input;
                    double arm = place.Turns ? double.Hypot(input.X, input.Y) : si, angle = place.Turns ? si : Math.Atan2(input.Y, input.X);
                    hand = hand with { Crank = hand.Crank with { Input = new(arm * Math.Cos(angle), arm * Math.Sin(angle)) } };
                }
            }

            return ModelDifferences.With(hand, values);
        }
    }
}
