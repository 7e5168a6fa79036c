using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Graspwright.Workshop.Results;

/// <summary>Writes an answer as JSON: fixed order, fixed units, ten significant digits.</summary>
public static class JsonAnswer
{
    /// <summary>Name and version of the tool as every answer gives it.</summary>
    public const string Tool = "graspwright 0.1.0";

    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The answer as JSON text, ending in a line end.</summary>
    /// <param name="answer">The answer.</param>
    public static string Write(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Text(json =>
        {
            json.WriteString("tool", Tool);
            json.WriteString("verb", answer.Verb);
            json.WriteString("hand", answer.Hand);
            json.WriteString("answer", answer.Sentence);
            if (answer.Situation is not null)
            {
                json.WriteString("situation", answer.Situation);
            }

            WriteFigures(json, answer.Figures);
            WriteFindings(json, answer.Findings);
            json.WriteStartArray("situations");
            foreach (Situation situation in answer.Situations)
            {
                json.WriteStartObject();
                json.WriteString("object", situation.ObjectName);
                json.WriteString("locks", situation.Locks);
                json.WriteString("effort", situation.Effort);
                WriteFigures(json, situation.Figures);
                WriteFindings(json, situation.Findings);
                WriteTables(json, situation.Tables);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteTables(json, answer.Tables);
            json.WriteStartArray("cautions");
            foreach (string caution in answer.Cautions)
            {
                json.WriteStringValue(caution);
            }

            json.WriteEndArray();
        });
    }

    /// <summary>Errors as JSON text, ending in a line end.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="errors">The errors.</param>
    public static string WriteErrors(string verb, IReadOnlyList<InputError> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return Text(json =>
        {
            json.WriteString("tool", Tool);
            json.WriteString("verb", verb);
            json.WriteStartArray("errors");
            foreach (InputError error in errors)
            {
                json.WriteStartObject();
                json.WriteString("file", error.File);
                json.WriteNumber("line", error.Line);
                json.WriteNumber("column", error.Column);
                json.WriteString("key", error.Key);
                json.WriteString("found", error.Found);
                json.WriteString("allowed", error.Allowed);
                json.WriteString("fix", error.Fix);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
    }

    private static string Text(Action<Utf8JsonWriter> body)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, Options))
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    private static void WriteFigures(Utf8JsonWriter json, IReadOnlyList<Figure> figures)
    {
        json.WriteStartObject("figures");
        foreach (Figure figure in figures)
        {
            json.WriteStartObject(figure.Key);
            Number(json, "value", figure.Value);
            json.WriteString("unit", figure.Unit);
            OptionalNumber(json, "low", figure.Low);
            OptionalNumber(json, "high", figure.High);
            if (figure.Why is not null)
            {
                json.WriteString("why", figure.Why);
            }

            if (figure.Working is { } working)
            {
                WriteWorking(json, working);
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteWorking(Utf8JsonWriter json, Working working)
    {
        json.WriteStartObject("working");
        json.WriteString("formula", working.Formula);
        json.WriteStartObject("inputs");
        foreach (WorkingInput input in working.Inputs)
        {
            json.WriteStartObject(input.Name);
            Number(json, "value", input.Value);
            json.WriteString("unit", input.Unit);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteString("source", working.Source);
        json.WriteEndObject();
    }

    private static void WriteFindings(Utf8JsonWriter json, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray("findings");
        foreach (Finding finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("key", finding.Key);
            json.WriteString("subject", finding.Subject);
            json.WriteString("verdict", finding.Verdict.Word());
            Number(json, "figure", finding.Figure);
            Number(json, "limit", finding.Limit);
            json.WriteString("unit", finding.Unit);
            Number(json, "margin", finding.Margin);
            json.WriteString("reason", finding.Reason);
            json.WriteString("change", finding.Change);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteTables(Utf8JsonWriter json, IReadOnlyList<Table> tables)
    {
        json.WriteStartObject("tables");
        foreach (Table table in tables)
        {
            json.WriteStartObject(table.Name);
            json.WriteStartArray("columns");
            foreach (Column column in table.Columns)
            {
                json.WriteStartObject();
                json.WriteString("name", column.Name);
                json.WriteString("unit", column.Unit);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("rows");
            foreach (IReadOnlyList<Cell> row in table.Rows)
            {
                json.WriteRawValue(Row(row), skipInputValidation: true);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    /// <summary>A row on one line, so that a table reads as one.</summary>
    private static string Row(IReadOnlyList<Cell> row)
    {
        StringBuilder text = new("[");
        for (int i = 0; i < row.Count; i++)
        {
            text.Append(i > 0 ? ", " : "");
            Cell cell = row[i];
            if (cell.Text is not null)
            {
                text.Append('"').Append(JsonEncodedText.Encode(cell.Text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).Value).Append('"');
            }
            else
            {
                text.Append(cell.Number is { } number ? Digits(number) : "null");
            }
        }

        return text.Append(']').ToString();
    }

    private static void OptionalNumber(Utf8JsonWriter json, string name, double? value)
    {
        if (value is not null)
        {
            Number(json, name, value);
        }
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        json.WritePropertyName(name);
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteRawValue(Digits(number), skipInputValidation: true);
        }
        else
        {
            json.WriteNullValue();
        }
    }

    private static string Digits(double value) => (value == 0 ? 0.0 : value).ToString("G10", CultureInfo.InvariantCulture);
}
