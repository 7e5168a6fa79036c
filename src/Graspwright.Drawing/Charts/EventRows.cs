using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Charts;

/// <summary>Event labels above a chart, in as many rows as they need to stay clear of one another.</summary>
internal sealed class EventRows
{
    private readonly List<(double X, double LabelLeft, string Label, int Row)> events = [];

    /// <summary>Number of rows.</summary>
    public int Rows { get; private set; }

    /// <summary>Places events: the lowest row in which the label is clear of its neighbours and of the lines that rise to higher rows.</summary>
    public static EventRows Place(IEnumerable<EventLine> lines, Func<double, double> scale, double heightMm, double left, double right)
    {
        var placed = new EventRows();
        foreach (EventLine e in lines.OrderByDescending(e => e.At))
        {
            // From the right: a label stands to the right of its own line, so it meets only lines already placed.
            double x = scale(e.At), width = Lettering.WidthMm(e.Label, heightMm) + 2;
            double at = Math.Max(left, Math.Min(x + 0.8, right - width));
            int row = 0;
            while (placed.events.Exists(o => o.Row == row && o.LabelLeft < at + width && at < o.LabelLeft + Lettering.WidthMm(o.Label, heightMm) + 2)
                || placed.events.Exists(o => o.Row > row && o.X > at && o.X < at + width))
            {
                row++;
            }

            placed.events.Add((x, at, e.Label, row));
            placed.Rows = Math.Max(placed.Rows, row + 1);
        }

        return placed;
    }

    /// <summary>Draws labels from a height up and the lines down to the foot.</summary>
    public void Draw(Picture picture, double fromY, double footY, double step, double heightMm)
    {
        foreach ((double x, double labelLeft, string label, int row) in events)
        {
            double y = fromY + row * step;
            picture.Line(new(x, footY), new(x, y + heightMm), new Pen(0.18, Ink.Accent, Dash.Dotted));
            picture.Text(new(labelLeft, y), label, heightMm, ink: Ink.Accent);
        }
    }
}
