using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Graspwright.Deciding.Search;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Search;

/// <summary>A stopped search as a file: from it the search goes on to the same end, to the bit.</summary>
public static class Checkpoint
{
    private const string Kind = "search checkpoint";
    private static readonly JsonSerializerOptions Numbers = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>Writes one.</summary>
    /// <param name="editor">The hand file that is searched.</param>
    /// <param name="search">The search.</param>
    /// <param name="options">How it is run.</param>
    /// <param name="state">Where it stands.</param>
    public static string Write(HandEditor editor, DesignSearch search, SearchOptions options, SearchState state)
    {
        ArgumentNullException.ThrowIfNull(editor);
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(state);
        return JsonSerializer.Serialize(
            new Stored(
                Kind, JsonAnswer.Tool, Mark(editor), search.Name, options.Seed, options.Evaluations, options.Population, options.Batch, state.Judged, state.Failed, state.Inside,
                [.. state.Credits], [.. state.Population.Select(Pack)], [.. state.Front.Select(Pack)], state.LeastBeyond is { } least ? Pack(least) : null), Numbers) + "\n";
    }

    /// <summary>Reads one.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="name">Name of the file, for messages.</param>
    /// <param name="editor">The hand file that is to be searched.</param>
    /// <param name="search">The search.</param>
    /// <param name="options">How it is to be run.</param>
    /// <returns>The state, or why it cannot be gone on from.</returns>
    public static (SearchState? State, InputError? Error) Read(string text, string name, HandEditor editor, DesignSearch search, SearchOptions options)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(editor);
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(options);
        Stored? stored;
        try
        {
            stored = JsonSerializer.Deserialize<Stored>(text, Numbers);
        }
        catch (JsonException fault)
        {
            return (null, new(name, (int)(fault.LineNumber ?? 0) + 1, (int)(fault.BytePositionInLine ?? 0) + 1, "", "no checkpoint of a search", "a file that a stopped search left", "Give the file that the search named when it stopped."));
        }

        if (stored is not { What: Kind, Population: not null, Front: not null, Credits: not null })
        {
            return (null, new(name, 0, 0, "", "no checkpoint of a search", "a file that a stopped search left", "Give the file that the search named when it stopped."));
        }

        InputError? Refused(string found, string allowed, string fix) => new(name, 0, 0, "--resume", found, allowed, fix);
        InputError? error =
            stored.Tool != JsonAnswer.Tool ? Refused($"a checkpoint of {stored.Tool}", $"one of {JsonAnswer.Tool}", "Another version may judge otherwise: search again from the beginning.")
            : stored.Search != search.Name ? Refused($"a checkpoint of the search ‘{stored.Search}’", $"one of ‘{search.Name}’", "Name that search, or give its own checkpoint.")
            : stored.Hand != Mark(editor) ? Refused("a checkpoint of another hand file, or of this one before it was changed", "one of this file as it is", "Search again from the beginning, or take the file back to what it was.")
            : stored.Seed != options.Seed ? Refused(FormattableString.Invariant($"a checkpoint with seed {stored.Seed}"), FormattableString.Invariant($"seed {options.Seed}"), FormattableString.Invariant($"Give --seed {stored.Seed}, or leave the option out."))
            : stored.Evaluations != options.Evaluations ? Refused(FormattableString.Invariant($"a checkpoint of a search over {stored.Evaluations} designs"), FormattableString.Invariant($"one over {options.Evaluations}"), FormattableString.Invariant($"Give --evaluations {stored.Evaluations}."))
            : null;
        return error is not null ? (null, error) : (new()
        {
            Judged = stored.Judged,
            Failed = stored.Failed,
            Inside = stored.Inside,
            Credits = stored.Credits,
            Population = [.. stored.Population.Select(Unpack)],
            Front = [.. stored.Front.Select(Unpack)],
            LeastBeyond = stored.Least is { } least ? Unpack(least) : null,
        }, null);
    }

    private static string Mark(HandEditor editor) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(editor.Source.Text.Text)));

    private static Packed Pack(Design design) => new(design.Number, design.Values, design.Outcome.Aims, design.Outcome.Excess, design.Outcome.Failed);

    private static Design Unpack(Packed packed) => new(packed.Number, packed.Values, new(packed.Aims, packed.Excess, packed.Failed));

    private sealed record Packed(long Number, double[] Values, double[] Aims, double[] Excess, bool Failed);

    private sealed record Stored(
        string What, string Tool, string Hand, string Search, long Seed, long Evaluations, int Breeding, int Batch, long Judged, long Failed, long Inside,
        double[] Credits, Packed[] Population, Packed[] Front, Packed? Least);
}
