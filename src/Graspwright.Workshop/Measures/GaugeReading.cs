using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>What a split-cylinder gauge of the object's size shows at the end of closing.</summary>
/// <remarks>
/// The gauge is two half cylinders with a load cell between them, turned in the hand so that the force across its
/// split is that of the fingers' resultant: fingers on one half, palm and thumb on the other. With e along the
/// resultant R it reads ½(Σ|fᵢ·e| + |R|): every finger's push across the split, and the palm's answer to their sum.
/// Fingers that wrap all round squeeze the gauge without adding to R, and show in the first term.
/// </remarks>
public sealed class GaugeReading() : Measure("gauge_reading", "reading of a split-cylinder gauge of the same size", "N", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        if (reading.Held is not Cylinder)
        {
            return Reading.None("a split-cylinder gauge stands in for a cylinder only");
        }

        Vector2D resultant = Resultant(reading);
        if (resultant.Length == 0)
        {
            return Reading.None("the fingers push the object nowhere");
        }

        Vector2D across = (1 / resultant.Length) * resultant;
        double sum = resultant.Length;
        foreach (ContactTerms.Contact contact in ContactTerms.All(reading))
        {
            sum += Math.Abs(contact.OnObject.Dot(across));
        }

        return sum / 2;
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        Vector2D resultant = Resultant(reading);
        string x = terms.Input("object_resultant_x", resultant.X, "N"), y = terms.Input("object_resultant_y", resultant.Y, "N");
        foreach (ContactTerms.Contact contact in ContactTerms.All(reading))
        {
            string fx = terms.Input($"{contact.Name}_x_force", contact.OnObject.X, "N");
            string fy = terms.Input($"{contact.Name}_y_force", contact.OnObject.Y, "N");
            terms.Add($"abs({fx}·{x} + {fy}·{y})");
        }

        return terms.Working($"(({terms.Sum})/sqrt({x}^2 + {y}^2) + sqrt({x}^2 + {y}^2))/2", Physics);
    }

    private static Vector2D Resultant(RunReading reading)
    {
        Vector2D sum = default;
        foreach (ContactTerms.Contact contact in ContactTerms.All(reading))
        {
            sum += contact.OnObject;
        }

        return sum;
    }
}
