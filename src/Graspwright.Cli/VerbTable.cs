using Graspwright.Cli.Verbs;

namespace Graspwright.Cli;

/// <summary>Every verb by its word. A verb is made when it is asked for: making them all takes a tenth of a short run.</summary>
internal static class VerbTable
{
    /// <summary>The verbs, in the order of the help.</summary>
    public static IReadOnlyList<(string Word, Func<Verb> Make)> All { get; } =
    [
        ("grip", () => new GripVerb()),
        ("check", () => new CheckVerb()),
        ("new", () => new NewVerb()),
        ("points", () => new PointsVerb()),
        ("show", () => new ShowVerb()),
        ("set", () => new SetVerb()),
        ("schema", () => new SchemaVerb()),
        ("jobs", () => new JobsVerb()),
        ("thumb", () => new ThumbVerb()),
        ("room", () => new RoomVerb()),
        ("postures", () => new PosturesVerb()),
        ("measure", () => new MeasureVerb()),
        ("card", () => new CardVerb()),
        ("dose", () => new DoseVerb()),
        ("readings", () => new ReadingsVerb()),
        ("proof", () => new ProofVerb()),
        ("sheets", () => new SheetsVerb()),
        ("breaks", () => new BreaksVerb()),
        ("lasts", () => new LastsVerb()),
        ("lives", () => new LivesVerb()),
        ("spares", () => new SparesVerb()),
        ("changes", () => new ChangesVerb()),
        ("search", () => new SearchVerb()),
        ("liner", () => new LinerVerb()),
        ("clock", () => new ClockVerb()),
        ("off", () => new OffVerb()),
        ("copies", () => new CopiesVerb()),
        ("form", () => new FormVerb()),
        ("pattern", () => new PatternVerb()),
        ("contacts", () => new ContactsVerb()),
        ("sites", () => new SitesVerb()),
        ("thresholds", () => new ThresholdsVerb()),
        ("listen", () => new ListenVerb()),
        ("open", () => new OpenVerb()),
    ];

    /// <summary>The verbs that a command line may be about: the one that it starts with, or all.</summary>
    /// <param name="args">The command line.</param>
    public static IReadOnlyList<Verb> For(string[] args)
    {
        foreach ((string word, Func<Verb> make) in All)
        {
            if (args.Length > 0 && args[0] == word)
            {
                return [make()];
            }
        }

        return [.. All.Select(v => v.Make())];
    }
}
