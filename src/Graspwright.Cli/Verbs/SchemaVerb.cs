using System.CommandLine;
using Graspwright.Hand;

namespace Graspwright.Cli.Verbs;

/// <summary><c>schema</c>: the JSON Schema of the hand file.</summary>
internal sealed class SchemaVerb() : Verb("schema", "Print the JSON Schema of the hand file, for editors that complete and check.")
{
    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal) => new(Schema, Schema);

    private static string Schema() => HandSchema.Json().TrimEnd() + "\n";
}
