using System.Globalization;
using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Dxf;

/// <summary>Reads points, circles, lines and texts from a DXF file of text, of any release.</summary>
/// <remarks>
/// Only the section ENTITIES is read: blocks are not opened up. Heights above the plane are ignored. Coordinates are
/// brought to millimetres by the header's unit ($INSUNITS); without one they are taken as millimetres.
/// </remarks>
public static class DxfReader
{
    /// <summary>Greatest distance from the origin that is believed [mm].</summary>
    public const double FarthestMm = 1e6;

    /// <summary>What the text of a DXF file holds.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Name for messages.</param>
    /// <exception cref="DrawingFileException">It is not DXF or a value can't be read.</exception>
    public static DxfDrawing Read(string text, string file)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<DxfPair> pairs = DxfPairs.Cut(text, file);
        (double scale, string unit) = UnitOf(pairs, file);
        int at = SectionStart(pairs, "ENTITIES");
        if (at < 0)
        {
            throw DxfPairs.Fault(file, 0, "ENTITIES", "no such section", "a DXF file with a section ENTITIES", "Is it a DXF drawing? Write it again from the drawing program.");
        }

        var entities = new List<DxfEntity>();
        int skipped = 0;
        while (at < pairs.Count && !pairs[at].Is(0, "ENDSEC"))
        {
            int end = at + 1;
            while (end < pairs.Count && pairs[end].Code != 0)
            {
                end++;
            }

            var group = new DxfGroup(file, pairs, at, end, scale);
            DxfEntity? entity = Entity(group);
            if (entity is null)
            {
                skipped += group.IsPart ? 0 : 1;
            }
            else
            {
                entities.Add(entity);
            }

            at = end;
        }

        return at < pairs.Count
            ? new(entities, unit, skipped)
            : throw DxfPairs.Fault(file, pairs[^1].Line, "ENTITIES", "the end of the file", "a section closed by ENDSEC", "The file is cut off: write it again.");
    }

    private static DxfEntity? Entity(DxfGroup group) => group.Type switch
    {
        "POINT" => new DxfPoint(group.Line, group.Layer, group.Place(10)),
        "LINE" => new DxfLine(group.Line, group.Layer, group.Place(10), group.Place(11)),
        "LWPOLYLINE" => new DxfPolyline(group.Line, group.Layer, group.Closed(group.Places())),
        "POLYLINE" => new DxfPolyline(group.Line, group.Layer, group.Closed(group.Vertices())),
        "CIRCLE" => new DxfCircle(group.Line, group.Layer, group.PlaceSeenAlongNormal(10), group.Length(40)),
        "TEXT" => new DxfText(group.Line, group.Layer, group.PlaceSeenAlongNormal(group.IsAligned ? 11 : 10), group.Length(40), DxfLettering.Plain(group.Text(1), ofParagraph: false)),
        "MTEXT" => new DxfText(group.Line, group.Layer, group.Place(10), group.Length(40), DxfLettering.Plain(group.LongText(), ofParagraph: true)),
        _ => null,
    };

    private static int SectionStart(List<DxfPair> pairs, string name)
    {
        for (int i = 0; i + 1 < pairs.Count; i++)
        {
            if (pairs[i].Is(0, "SECTION") && pairs[i + 1].Is(2, name))
            {
                return i + 2;
            }
        }

        return -1;
    }

    private static (double Scale, string Unit) UnitOf(List<DxfPair> pairs, string file)
    {
        int at = SectionStart(pairs, "HEADER");
        for (int i = Math.Max(at, 0); at >= 0 && i + 1 < pairs.Count && !pairs[i].Is(0, "ENDSEC"); i++)
        {
            if (pairs[i].Is(9, "$INSUNITS"))
            {
                DxfPair value = pairs[i + 1];
                return value.Value.Trim() switch
                {
                    "0" => (1, "not stated, taken as millimetres"),
                    "1" => (25.4, "inches"),
                    "4" => (1, "millimetres"),
                    "5" => (10, "centimetres"),
                    "6" => (1000, "metres"),
                    _ => throw DxfPairs.Fault(file, value.Line, "$INSUNITS", DrawingFileException.Shown(value.Value), "0 none, 1 inches, 4 millimetres, 5 centimetres, 6 metres", "Set the drawing's unit to millimetres."),
                };
            }
        }

        return (1, "not stated, taken as millimetres");
    }
}

/// <summary>The pairs of one entity.</summary>
internal readonly struct DxfGroup(string file, List<DxfPair> pairs, int start, int end, double scale)
{
    public string Type { get; } = pairs[start].Value.Trim().ToUpperInvariant();

    public int Line => pairs[start].Line;

    /// <summary>Whether it belongs to the entity before it.</summary>
    public bool IsPart => Type is "VERTEX" or "SEQEND" or "ATTRIB";

    public string Layer => Find(8) is { } p ? p.Value.Trim() : "0";

    /// <summary>Whether a text hangs by its second point (codes 72 and 73).</summary>
    public bool IsAligned => (Find(72) is { } h && h.Value.Trim() != "0" || Find(73) is { } v && v.Value.Trim() != "0") && Find(11) is not null;

    public Place Place(int code) => new(Coordinate(code), Coordinate(code + 10));

    /// <summary>A place in the entity's own plane: mirrored where that is seen from behind.</summary>
    public Place PlaceSeenAlongNormal(int code)
    {
        Place place = Place(code);
        double nx = Optional(210, 0), ny = Optional(220, 0), nz = Optional(230, 1);
        if (Math.Abs(nx) > 1e-6 || Math.Abs(ny) > 1e-6 || nz == 0)
        {
            throw DxfPairs.Fault(file, Line, Type, "an entity that does not lie in the plane of the drawing", "entities in the xy plane", "Draw it flat.");
        }

        return nz > 0 ? place : place with { X = -place.X };
    }

    /// <summary>Every place among the entity's own pairs.</summary>
    public List<Place> Places()
    {
        List<Place> places = [];
        for (int i = start + 1; i < end; i++)
        {
            if (pairs[i].Code == 10)
            {
                DxfPair y = i + 1 < end && pairs[i + 1].Code == 20 ? pairs[i + 1] : throw DxfPairs.Fault(file, pairs[i].Line, Type, "an x without its y", "group codes 10 and 20 in turn", "The file is damaged: write it again.");
                places.Add(new(Within(pairs[i]), Within(y)));
            }
        }

        return places;
    }

    /// <summary>Places of the vertices that follow the entity, up to the end of its sequence.</summary>
    public List<Place> Vertices()
    {
        List<Place> places = [];
        for (int i = end; i < pairs.Count && pairs[i].Is(0, "VERTEX");)
        {
            int next = i + 1;
            while (next < pairs.Count && pairs[next].Code != 0)
            {
                next++;
            }

            places.Add(new DxfGroup(file, pairs, i, next, scale).Place(10));
            i = next;
        }

        return places;
    }

    /// <summary>The places, the first again at the end where the entity is closed (bit 1 of code 70).</summary>
    public IReadOnlyList<Place> Closed(List<Place> places)
    {
        if (places.Count > 0 && ((int)Optional(70, 0) & 1) == 1)
        {
            places.Add(places[0]);
        }

        return places;
    }

    public double Length(int code)
    {
        double length = scale * Number(Needed(code));
        return length > 0 && length <= DxfReader.FarthestMm ? length
            : throw DxfPairs.Fault(file, Needed(code).Line, Type, DrawingFileException.Shown(Needed(code).Value), "a length above 0", "Give it a size.");
    }

    public string Text(int code) => Needed(code).Value;

    public string LongText()
    {
        List<DxfPair> all = pairs;
        IEnumerable<string> parts = Enumerable.Range(start, end - start).Select(i => all[i]).Where(p => p.Code is 3 or 1).OrderByDescending(p => p.Code).Select(p => p.Value);
        return string.Concat(parts);
    }

    private double Coordinate(int code) => Within(Needed(code));

    private double Within(DxfPair pair)
    {
        double value = scale * Number(pair);
        return Math.Abs(value) <= DxfReader.FarthestMm ? value
            : throw DxfPairs.Fault(file, pair.Line, Type, DrawingFileException.Shown(pair.Value), "a coordinate within 1 km of the origin", "Is the drawing's unit right?");
    }

    private double Optional(int code, double otherwise) => Find(code) is { } p ? Number(p) : otherwise;

    private DxfPair Needed(int code) => Find(code)
        ?? throw DxfPairs.Fault(file, Line, Type, $"no group code {code}", $"a {Type} with group code {code}", "The file is damaged: write it again.");

    private double Number(DxfPair pair) =>
        double.TryParse(pair.Value.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value
            : throw DxfPairs.Fault(file, pair.Line, Type, DrawingFileException.Shown(pair.Value), $"a number for group code {pair.Code}", "Numbers have a decimal point.");

    private DxfPair? Find(int code)
    {
        for (int i = start + 1; i < end; i++)
        {
            if (pairs[i].Code == code)
            {
                return pairs[i];
            }
        }

        return null;
    }
}
