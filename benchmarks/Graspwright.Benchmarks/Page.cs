namespace Graspwright.Benchmarks;

/// <summary>The page of figures.</summary>
internal static class Page
{
    private const string Head =
        """
        # Performance

        This page is made by `dotnet run -c Release --project benchmarks/Graspwright.Benchmarks -- --write docs/performance.md`; every figure and every fact of the machine is as that run measured or read it.

        """;

    private const string Limits =
        """
        ## What these figures cannot show

        - A time is of this machine on this day. Batches of a few milliseconds are timed and the shortest counts as the undisturbed time; where other programs wanted the cores too, the medians and the figures of several cores suffer.
        - Where a peer runs, only the ratio of one run means something, and only for that case: a finger of three joints on a cylinder.
        - The SciPy program calls Python for each evaluation; most of its time is the interpreter, not the method.
        - The converged run is our own with a sixteenth of the step. It shows that the step is fine enough, not that the model is right; for that see the reference cases in the tests.
        - A relative difference at a common angle is taken of the converged value, or of a hundredth of its greatest value on that leg where it is smaller than that.
        - The share of arithmetic counts one evaluation, one factorisation and one solution for each factorisation of the run, timed at the states of closing. Second solutions at events and the searches of jumps are left out, and stops that are held make real factorisations cheaper, so it is an estimate; the rest is prediction, watching for events, recording.
        """;

    /// <summary>The page.</summary>
    /// <param name="sections">The figures.</param>
    public static string Write(IEnumerable<Section> sections)
    {
        List<string> lines = [Head.TrimEnd(), "", .. Machine.Facts()];
        foreach (Section s in sections)
        {
            lines.AddRange(["", $"## {s.Title}", "", s.Words]);
            if (s.Rows.Count > 0)
            {
                lines.AddRange(["", .. Row.Table(s.Rows)]);
            }
        }

        lines.AddRange(["", Limits.TrimEnd()]);
        return string.Join('\n', lines).ReplaceLineEndings("\n") + "\n";
    }
}
