using Graspwright.Mechanics.Drive;

namespace Graspwright.Workshop.Bench;

/// <summary>Something about a built hand that only readings can tell.</summary>
/// <param name="Name">Name.</param>
/// <param name="Words">What it is.</param>
/// <param name="Scaled">The drive with it multiplied by a factor; <see langword="null"/> = this drive does not have it.</param>
public sealed record BenchParameter(string Name, string Words, Func<double, DriveModel>? Scaled)
{
    /// <summary>Everything that a bench can tell of a drive.</summary>
    /// <param name="drive">The drive.</param>
    public static IReadOnlyList<BenchParameter> Of(DriveModel drive)
    {
        ArgumentNullException.ThrowIfNull(drive);
        FrictionCoefficients friction = drive.Friction;
        bool drags = drive.Crank.Drag > 0 || drive.Rail.Drag > 0 || drive.Fingers.Any(f => f.Drag.First + f.Drag.Second + f.Drag.Third > 0);
        BenchParameter[] all =
        [
            new("pin friction", "friction at the pins", friction.Pin > 0 ? f => drive with { Friction = friction with { Pin = f * friction.Pin } } : null),
            new("rail friction", "friction between carriage and rail", friction.Rail > 0 ? f => drive with { Friction = friction with { Rail = f * friction.Rail } } : null),
            new("guide friction", "friction of the pulls in their guides", friction.Guide > 0 && drive.Fingers.Any(f => f.Pull.GuideWrapRadians > 0) ? f => drive with { Friction = friction with { Guide = f * friction.Guide } } : null),
            new("slot friction", "friction of the output pin in its slot", friction.Slot > 0 && drive.Crank.Slot is not null ? f => drive with { Friction = friction with { Slot = f * friction.Slot } } : null),
            new("shift spring", "spring that holds the output pin out, preload and rate together", drive.Crank.Slot is { Preload: > 0 } ? f => Shifted(drive, f) : null),
            new("drag", "drag that is there without load", drags ? f => Dragged(drive, f) : null),
            new("cuff give", "stiffness of the cuff", double.IsFinite(drive.Joint.CuffStiffness) ? f => drive with { Joint = drive.Joint with { CuffStiffness = f * drive.Joint.CuffStiffness } } : null),
            new("link stiffness", "stiffness of links and pulls", f => Linked(drive, f)),
            new("pad stiffness", "stiffness of the pads", f => drive with { Fingers = [.. drive.Fingers.Select(x => x with { PadStiffness = f * x.PadStiffness })] }),
            new("finger springs", "springs that open the fingers", drive.Fingers.Any(f => f.SpringRate.First + f.SpringPreload.First > 0) ? f => Sprung(drive, f) : null),
        ];
        return [.. all.Where(p => p.Scaled is not null)];
    }

    private static DriveModel Dragged(DriveModel drive, double f) => drive with
    {
        Crank = drive.Crank with { Drag = f * drive.Crank.Drag },
        Rail = drive.Rail with { Drag = f * drive.Rail.Drag },
        Fingers = [.. drive.Fingers.Select(x => x with { Drag = Times(x.Drag, f) })],
    };

    private static DriveModel Shifted(DriveModel drive, double f)
    {
        Mechanics.Drive.Slot slot = drive.Crank.Slot!;
        return drive with { Crank = drive.Crank with { Slot = slot with { Preload = f * slot.Preload, Rate = f * slot.Rate } } };
    }

    private static DriveModel Linked(DriveModel drive, double f) => drive with
    {
        PullLink = drive.PullLink with { Stiffness = f * drive.PullLink.Stiffness },
        TransferLink = drive.TransferLink with { Stiffness = f * drive.TransferLink.Stiffness },
        Fingers = [.. drive.Fingers.Select(x => x with { Pull = x.Pull with { Stiffness = f * x.Pull.Stiffness } })],
    };

    private static DriveModel Sprung(DriveModel drive, double f) => drive with
    {
        Fingers = [.. drive.Fingers.Select(x => x with { SpringRate = Times(x.SpringRate, f), SpringPreload = Times(x.SpringPreload, f) })],
    };

    private static Triple Times(Triple t, double f) => new(f * t.First, f * t.Second, f * t.Third);
}
