using System.Globalization;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Whether a small controller has the time for the filters, and what to load into it.</summary>
internal static class ControllerFindings
{
    public static ControllerKind KindOf(string words) => words switch
    {
        "8 bit" => ControllerKind.All[0],
        "32 bit" => ControllerKind.All[1],
        _ => ControllerKind.All[2],
    };

    public static void Add(SignalSet set, FrontEnd front, List<Figure> figures, List<Finding> findings, List<Table> tables)
    {
        const int tried = 64;
        FixedChain chain = new(front);
        for (int i = 0; i < tried; i++)
        {
            chain.Step(i % 2 == 0 ? 1000 : -1000);
        }

        ControllerKind controller = KindOf(set.Plan.Controller);
        long cycles = controller.Cycles(chain.Work) / tried;
        double share = cycles * set.Channels.Count * front.RateHertz / controller.ClockHertz;
        figures.Add(new("controller_share", $"share of a controller ({controller.Words}) that the filters take", "%")
        {
            Value = 100 * share,
            Working = new("100·cycles_of_a_sample·channels·rate/clock", [new("cycles_of_a_sample", cycles, ""), new("channels", set.Channels.Count, ""), new("rate", front.RateHertz, "Hz"), new("clock", controller.ClockHertz, "Hz")], "fixed-point"),
        });
        findings.Add(SignalWords.Judged("controller_time", set.Plan.Controller, 100 * share, 100 * set.Plan.LoopShare, most: true, "%",
            string.Create(CultureInfo.InvariantCulture, $"The filters in whole numbers take about {cycles} cycles a sample and channel: {100 * share:0} % of a controller of {controller.Words} at {front.RateHertz:0} samples a second."),
            set.Kind == SignalKind.Envelope ? "Sample more slowly; 100 a second do for an envelope." : "A 32-bit controller, fewer samples a second, or amplifiers that give the envelope."));
        List<IReadOnlyList<Cell>> rows = [];
        int section = 0, bands = front.Band?.Sections.Count ?? 0;
        foreach (int[] c in chain.Coefficients)
        {
            rows.Add([section < bands ? "band" : "smoothing", ++section, c[0], c[1], c[2], c[3], c[4]]);
        }

        tables.Add(new("coefficients, 28 bits behind the point", [new("part", ""), new("section", ""), new("b0", ""), new("b1", ""), new("b2", ""), new("a1", ""), new("a2", "")], rows));
    }
}
