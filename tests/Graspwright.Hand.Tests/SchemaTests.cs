using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Graspwright.Hand.Tests;

public sealed class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(HandSchema.Json());

    [Fact]
    public void Is_a_valid_schema_of_its_draft()
    {
        JsonElement schema = JsonDocument.Parse(HandSchema.Json()).RootElement;
        Assert.True(MetaSchemas.Draft202012.Evaluate(schema).IsValid);
    }

    [Fact]
    public void Accepts_the_starter() => Assert.True(Accepts(Starter.Text));

    [Fact]
    public void Accepts_the_starter_written_out_in_full() =>
        Assert.True(Accepts(HandWriter.Write(HandFile.Parse(Starter.Text, "hand.toml").Hand! with { Guesses = [] })));

    [Theory]
    [InlineData("travel = \"36 deg\"", "travel = 36")]
    [InlineData("travel = \"36 deg\"", "travel = \"36,5 deg\"")]
    [InlineData("travel = \"36 deg\"", "travel = \"36 mm\"")]
    [InlineData("travel = \"36 deg\"", "travel = \"-36 deg\"")]
    [InlineData("travel = \"36 deg\"", "travl = \"36 deg\"")]
    [InlineData("side = \"right\"", "side = \"up\"")]
    [InlineData("fulcrum = [\"22 mm\", \"21 mm\"]", "fulcrum = [\"22 mm\"]")]
    [InlineData("fulcrum = [\"22 mm\", \"21 mm\"]", "")]
    [InlineData("[objects.handle]", "[friction]\npin = -0.1\n[objects.handle]")]
    [InlineData("[objects.handle]", "[balance]\nfirst = 3\nsecond = \"index\"\n[objects.handle]")]
    public void Refuses_what_the_reader_refuses(string from, string to)
    {
        string text = Starter.Text.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEmpty(HandFile.Parse(text, "hand.toml").Errors);
        Assert.False(Accepts(text));
    }

    private static bool Accepts(string toml) => Schema.Evaluate(JsonDocument.Parse(ToJson(toml).ToJsonString()).RootElement).IsValid;

    /// <summary>TOML as JSON, by a second walk over the syntax that shares nothing with the reader.</summary>
    private static JsonObject ToJson(string toml)
    {
        DocumentSyntax document = SyntaxParser.Parse(toml, "hand.toml", validate: true);
        JsonObject root = [];
        foreach (KeyValueSyntax item in document.KeyValues)
        {
            Put(root, item);
        }

        foreach (TableSyntaxBase section in document.Tables)
        {
            JsonObject table = Names(section.Name!).Aggregate(root, Below);
            foreach (KeyValueSyntax item in section.Items)
            {
                Put(table, item);
            }
        }

        return root;
    }

    private static void Put(JsonObject table, KeyValueSyntax item)
    {
        string[] names = [.. Names(item.Key!)];
        names[..^1].Aggregate(table, Below)[names[^1]] = Value(item.Value!);
    }

    private static JsonObject Below(JsonObject table, string name)
    {
        if (table[name] is not JsonObject)
        {
            table[name] = new JsonObject();
        }

        return (JsonObject)table[name]!;
    }

    private static IEnumerable<string> Names(KeySyntax key) => key.DotKeys.Select(d => d.Key!).Prepend(key.Key!)
        .Select(k => k is StringValueSyntax text ? text.Value! : k.ToString()!.Trim());

    private static JsonNode Value(ValueSyntax value) => value switch
    {
        StringValueSyntax text => JsonValue.Create(text.Value!),
        IntegerValueSyntax whole => JsonValue.Create(whole.Value),
        FloatValueSyntax real => JsonValue.Create(real.Value),
        ArraySyntax list => new JsonArray([.. list.Items.Select(i => Value(i.Value!))]),
        InlineTableSyntax inline => Inline(inline),
        _ => throw new NotSupportedException(value.Kind.ToString()),
    };

    private static JsonObject Inline(InlineTableSyntax inline)
    {
        JsonObject table = [];
        foreach (InlineTableItemSyntax item in inline.Items)
        {
            Put(table, item.KeyValue!);
        }

        return table;
    }
}
