using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Every measure, in the order in which answers list them.</summary>
public static class MeasureTable
{
    /// <summary>All measures.</summary>
    public static IReadOnlyList<Measure> All { get; } =
    [
        new GripForce(), new ObjectResultantX(), new ObjectResultantY(), new GaugeReading(), new FingertipGauge(),
        new FirstTouch(), new AllTouch(), new TimeToTouch(),
        new ShiftStart(), new ShiftCost(), new ShiftGiveBack(), new OutputArm(),
        new MechanicalAdvantage(), new WorkIn(), new GripEfficiency(), new FrictionEfficiency(),
        new LoopMean(), new LoopMax(), new ReopeningLeft(),
        new WristLeft(), new DegreesLostToGive(), new DeadTravel(worn: false), new DeadTravel(worn: true), new CuffSlide(),
        new EffortShare(), new HoldTime(), new CarriageLeft(), new SlotLeft(), new PeakLink(), new PeakPin(), new Clearance(),
    ];

    /// <summary>The measure of a key.</summary>
    /// <param name="key">Key.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static Measure Of(string key)
    {
        foreach (Measure measure in All)
        {
            if (measure.Key == key)
            {
                return measure;
            }
        }

        throw new ArgumentException($"There is no measure '{key}'.", nameof(key));
    }

    /// <summary>Figures of every measure.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    public static IReadOnlyList<Figure> Figures(RunReading reading)
    {
        Figure[] figures = new Figure[All.Count];
        for (int i = 0; i < figures.Length; i++)
        {
            figures[i] = All[i].Figure(reading);
        }

        return figures;
    }
}
