using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;
using Graspwright.Workshop.Drive;

namespace Graspwright.Workshop.Jobs;

/// <summary>Hands a job's records to the statics of holding.</summary>
internal static class JobMapping
{
    /// <summary>Friction, palm and thumb of a job.</summary>
    public static BesideFingers Beside(Hand.HandModel hand, Hand.Job job)
    {
        Hand.Pads pads = Pads(hand);
        Hand.Thumb thumb = hand.Thumb ?? throw new ArgumentException("A hand with jobs has a thumb.", nameof(hand));
        double wet = job.Wet ? pads.WetFactor : 1;
        bool usesThumb = job.As is Hand.HeldAs.Plate or Hand.HeldAs.Handle;
        return new()
        {
            PadFriction = wet * pads.Friction,
            PalmFriction = wet * pads.SkinFriction,
            ThumbFriction = wet * pads.SkinFriction,
            Palm = job.As is Hand.HeldAs.Cylinder or Hand.HeldAs.Handle,
            PalmPoint = DriveMapping.ToVector(hand.Palm.Point),
            PalmRadians = hand.Palm.DirectionRadians,
            HeelRadians = thumb.HeelRadians,
            PalmBreadth = hand.HandBreadth,
            ThumbForce = usesThumb ? thumb.Pinch : 0,
            ThumbAcross = thumb.Across,
            PadRadius = pads.Patch / 2,
        };
    }

    /// <summary>Pads of a hand with jobs.</summary>
    public static Hand.Pads Pads(Hand.HandModel hand) => hand.Pads ?? throw new ArgumentException("A hand with jobs has pads.", nameof(hand));

    /// <summary>The forearm's attitude.</summary>
    public static ForearmAttitude Attitude(string words) => words switch
    {
        "palm down" => ForearmAttitude.PalmDown,
        "thumb up" => ForearmAttitude.ThumbUp,
        "palm up" => ForearmAttitude.PalmUp,
        "overhead" => ForearmAttitude.Overhead,
        "hanging" => ForearmAttitude.Hanging,
        _ => throw new ArgumentException($"'{words}' is no attitude of the forearm.", nameof(words)),
    };

    /// <summary>Unit direction of a pull.</summary>
    public static Vector3D Direction(string words) => words switch
    {
        "distal" => new(1, 0, 0),
        "proximal" => new(-1, 0, 0),
        "dorsal" => new(0, 1, 0),
        "palmar" => new(0, -1, 0),
        "toward the thumb" => new(0, 0, 1),
        "away from the thumb" => new(0, 0, -1),
        _ => throw new ArgumentException($"'{words}' is no direction of the hand.", nameof(words)),
    };

    /// <summary>The load of a job: weight where it hangs, pull and twist at the middle of what is held.</summary>
    public static OutsideLoad Load(Hand.Job job, Grasp grasp, Vector3D down)
    {
        Vector3D weight = job.Load * Mechanics.Holding.Attitude.Gravity * down;
        return new OutsideLoad(weight, Hangs(job, grasp), default).With(new(job.Pull * Direction(job.Toward), grasp.Centre, job.Twist * grasp.Axis), grasp.Centre);
    }

    /// <summary>A push of the job's mass by its acceleration along a direction.</summary>
    public static OutsideLoad Shaken(Hand.Job job, Grasp grasp, Vector3D direction) =>
        new(job.Load * Mechanics.Holding.Attitude.Gravity * job.Acceleration * direction, Hangs(job, grasp), default);

    private static Vector3D Hangs(Hand.Job job, Grasp grasp) => grasp.Centre + new Vector3D(job.Hangs.X, job.Hangs.Y, job.Hangs.Z);
}
