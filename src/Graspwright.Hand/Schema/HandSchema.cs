using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Graspwright.Hand;

/// <summary>JSON Schema of the hand file, made from the table of keys.</summary>
/// <source key="json-schema-2020-12">JSON Schema, draft 2020-12, core and validation.</source>
public static class HandSchema
{
    private const string Number = @"[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?";
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as JSON text. TOML tables, lists, texts and numbers stand for those of JSON.</summary>
    public static string Json()
    {
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Hand file",
        };
        foreach ((string name, JsonNode? value) in Table(HandKeys.Root).ToArray())
        {
            schema[name] = value!.DeepClone();
        }

        schema["$defs"] = new JsonObject { ["bar"] = Table(HandKeys.Root.Find("balance")!.Parts!()) };
        return schema.ToJsonString(Readable) + "\n";
    }

    private static JsonObject Table(HandSection section)
    {
        JsonObject properties = [];
        foreach (HandKey key in section.Keys)
        {
            properties[key.Name] = Value(key);
        }

        JsonObject table = new() { ["type"] = "object", ["description"] = section.Words, ["properties"] = properties };
        table["additionalProperties"] = section.AnyKey is { } any ? Value(any) : false;
        if (section.Keys.Any(k => k.Required) && !SharesValues(section))
        {
            table["required"] = new JsonArray([.. section.Keys.Where(k => k.Required).Select(k => (JsonNode)k.Name)]);
        }

        return table;
    }

    /// <summary>A finger may take what it needs from the values for all fingers, which a schema cannot see.</summary>
    private static bool SharesValues(HandSection section) => ReferenceEquals(section, FingerKeys.Finger);

    private static JsonObject Value(HandKey key)
    {
        JsonObject value = key.Form switch
        {
            KeyForm.Text or KeyForm.FileName => new() { ["type"] = "string" },
            KeyForm.Choice => new() { ["enum"] = new JsonArray([.. key.Choices.Select(c => (JsonNode)c)]) },
            KeyForm.Quantity => One(key),
            KeyForm.Tolerance => new() { ["type"] = new JsonArray("string", "number") },
            KeyForm.AsThere => new() { ["type"] = new JsonArray("string", "number", "array") },
            KeyForm.AsMeasured => new() { ["type"] = new JsonArray("string", "number") },
            KeyForm.SeveralAsThere => new() { ["type"] = "array", ["minItems"] = 2 },
            KeyForm.Words => new() { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } },
            KeyForm.Pair => List(One(key), One(key)),
            KeyForm.Triple => new() { ["anyOf"] = new JsonArray(One(key), List(One(key), One(key), One(key))) },
            KeyForm.MomentTable => new() { ["type"] = "array", ["minItems"] = 1, ["items"] = List(One(key with { Dimension = Dimension.Angle, Bounds = Bounds.Any }), One(key)) },
            KeyForm.Outline => new() { ["type"] = "array", ["minItems"] = 3, ["maxItems"] = ValueReading.MostCorners, ["items"] = List(One(key), One(key with { Dimension = Dimension.Angle })) },
            KeyForm.FingerOrBar => new() { ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "string" }, new JsonObject { ["$ref"] = "#/$defs/bar" }) },
            _ => Table(key.Parts!()),
        };
        if (key.Words.Length > 0)
        {
            value["description"] = key.Words;
        }

        return value;
    }

    private static JsonObject List(params JsonObject[] items) => new()
    {
        ["type"] = "array",
        ["prefixItems"] = new JsonArray([.. items]),
        ["items"] = false,
        ["minItems"] = items.Length,
    };

    private static JsonObject One(HandKey key)
    {
        string units = string.Join('|', Unit.Of(key.Dimension).SelectMany(u => u.Spellings).Select(Regex.Escape));
        string sign = key.Bounds.Low >= 0 ? Number.Replace("[+-]?(", "\\+?(", StringComparison.Ordinal) : Number;
        string word = key.Unbounded is { } unbounded ? $"|^{unbounded}$" : "";
        JsonObject text = new() { ["type"] = "string", ["pattern"] = string.Create(CultureInfo.InvariantCulture, $"^\\s*{sign}\\s*({units}){(key.Dimension == Dimension.Number ? "?" : "")}\\s*${word}") };
        return key.Dimension == Dimension.Number ? new() { ["anyOf"] = new JsonArray(text, Plain(key.Bounds)) } : text;
    }

    private static JsonObject Plain(Bounds bounds)
    {
        JsonObject number = new() { ["type"] = "number" };
        if (double.IsFinite(bounds.Low))
        {
            number[bounds.LowIsOpen ? "exclusiveMinimum" : "minimum"] = bounds.Low;
        }

        if (double.IsFinite(bounds.High))
        {
            number["maximum"] = bounds.High;
        }

        return number;
    }
}
