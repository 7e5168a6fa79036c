using Graspwright.Drawing;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Dxf;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Form;

/// <summary>Reads an outline that was traced round a piece: the longest closed line of a DXF drawing.</summary>
public static class TracedOutline
{
    private const double Gap = 1.0;

    /// <summary>Reads.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Its name.</param>
    /// <returns>Corners in turn [m], or what is wrong.</returns>
    public static (IReadOnlyList<(double X, double Y)>? Line, IReadOnlyList<InputError> Errors) Read(string text, string file)
    {
        DxfDrawing drawing;
        try
        {
            drawing = DxfReader.Read(text, file);
        }
        catch (DrawingFileException fault)
        {
            return (null, [.. fault.Faults.Select(f => new InputError(f.File, f.Line, f.Column, f.Key, f.Found, f.Allowed, f.Fix))]);
        }

        List<List<Place>> lines = [.. drawing.Entities.OfType<DxfPolyline>().Select(p => p.Places.ToList()), .. drawing.Entities.OfType<DxfLine>().Select(l => new List<Place> { l.From, l.To })];
        List<Place>? best = null;
        foreach (List<Place> line in Joined(lines).Where(l => l.Count > 2 && l[0].DistanceTo(l[^1]) <= Gap))
        {
            best = best is null || Length(line) > Length(best) ? line : best;
        }

        return best is null
            ? (null, [new(file, 0, 0, "", $"no closed line among {drawing.Entities.Count} marks", "a closed outline of lines or polylines in millimetres", "Trace the piece in one go and close the line; lines may miss each other by 1 mm.")])
            : ([.. best.Select(p => (p.X / 1000, p.Y / 1000))], []);
    }

    private static List<List<Place>> Joined(List<List<Place>> lines)
    {
        List<List<Place>> done = [];
        while (lines.Count > 0)
        {
            List<Place> line = [.. lines[^1]];
            lines.RemoveAt(lines.Count - 1);
            while (line[0].DistanceTo(line[^1]) > 1e-6 && lines.FindIndex(l => l[0].DistanceTo(line[^1]) < Gap || l[^1].DistanceTo(line[^1]) < Gap) is var next and >= 0)
            {
                List<Place> more = [.. lines[next]];
                lines.RemoveAt(next);
                if (more[0].DistanceTo(line[^1]) >= Gap)
                {
                    more.Reverse();
                }

                line.AddRange(more.Skip(1));
            }

            done.Add(line);
        }

        return done;
    }

    private static double Length(List<Place> line) => line.Zip(line.Skip(1)).Sum(p => p.First.DistanceTo(p.Second));
}
