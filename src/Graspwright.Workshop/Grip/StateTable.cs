using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Grip;

/// <summary>All recorded states of all cases as one table, for a spreadsheet.</summary>
public static class StateTable
{
    /// <summary>Closing and opening rows of each case, output steps and events.</summary>
    /// <param name="cases">Cases of one hand.</param>
    public static Table Of(IReadOnlyList<GripCase> cases)
    {
        ArgumentNullException.ThrowIfNull(cases);
        List<Column> columns = [new("object", ""), new("locks", ""), new("effort", ""), new("leg", "")];
        List<IReadOnlyList<Cell>> rows = [];
        foreach (GripCase c in cases)
        {
            TraceLayout layout = c.Reading.Run.Layout;
            if (columns.Count == 4)
            {
                columns.AddRange(RunTables.StateColumns(layout));
            }

            AddLeg(rows, c, layout, c.Reading.Run.Closing, "closing");
            AddLeg(rows, c, layout, c.Reading.Run.Opening, "opening");
        }

        return new("states", columns, rows);
    }

    private static void AddLeg(List<IReadOnlyList<Cell>> rows, GripCase c, TraceLayout layout, IReadOnlyList<double[]> states, string leg)
    {
        foreach (double[] state in states)
        {
            rows.Add([c.Situation.ObjectName, c.Situation.Locks, c.Situation.Effort, leg, .. RunTables.StateRow(layout, state)]);
        }
    }
}
