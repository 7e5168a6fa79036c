using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>A rectangle of the hand frame [m].</summary>
internal readonly record struct Extent(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public Extent With(Vector2D p, double round) =>
        new(Math.Min(Left, p.X - round), Math.Min(Bottom, p.Y - round), Math.Max(Right, p.X + round), Math.Max(Top, p.Y + round));

    /// <summary>Extent of a drive and what it holds over some postures.</summary>
    public static Extent Of(DriveModel drive, HeldObject held, IEnumerable<Posture> postures)
    {
        const double room = 0.006;
        var extent = new Extent(-room, -room, room, room);
        extent = extent.With(drive.Crank.Fulcrum, room).With(drive.PullLink.Anchor, room).With(drive.Rail.Rest, room)
            .With(drive.Rail.Rest + drive.Rail.Travel * Vector2D.AtAngle(drive.Rail.DirectionRadians), room);
        foreach (Posture p in postures)
        {
            extent = extent.With(p.Anchor, room).With(p.Input, room).With(p.Output, room).With(p.SlotFar, room).With(p.CarriagePin, room);
            for (int i = 0; i < p.Fingers.Count; i++)
            {
                for (int j = 0; j < 4; j++)
                {
                    extent = extent.With(p.Fingers[i][j], drive.Fingers[i].HalfThickness[Math.Min(j, 2)]);
                }
            }
        }

        return held switch
        {
            Cylinder c => extent.With(c.Centre, c.Radius),
            Face f => extent.With(f.Point, room),
            _ => extent,
        };
    }
}

/// <summary>Maps the hand frame to a place on the paper, at a round scale.</summary>
internal sealed class ViewFrame
{
    private static readonly double[] Reductions = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10, 15, 20, 50, 100, 200, 500, 1000];
    private readonly Extent extent;
    private readonly Place corner;

    /// <summary>The largest round scale at which an extent fits, centred across, at the foot of the area.</summary>
    public ViewFrame(Extent extent, double widthMm, double heightMm, Place lowerLeft)
    {
        this.extent = extent;
        Reduction = Reductions.FirstOrDefault(r => 1000 * extent.Width / r <= widthMm && 1000 * extent.Height / r <= heightMm, Reductions[^1]);
        corner = lowerLeft.Moved((widthMm - 1000 * extent.Width / Reduction) / 2, 0);
    }

    /// <summary>An extent at any scale, its lower left corner at a place.</summary>
    public ViewFrame(Extent extent, double reduction, Place lowerLeft)
    {
        this.extent = extent;
        Reduction = reduction;
        corner = lowerLeft;
    }

    /// <summary>Millimetres of the hand to one of the paper.</summary>
    public double Reduction { get; }

    /// <summary>Height of the extent on the paper [mm].</summary>
    public double HeightMm => 1000 * extent.Height / Reduction;

    /// <summary>The scale in words.</summary>
    public string Scale => "1:" + Reduction.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Place of a point of the hand frame [m].</summary>
    public Place At(Vector2D p) => corner.Moved(1000 * (p.X - extent.Left) / Reduction, 1000 * (p.Y - extent.Bottom) / Reduction);

    /// <summary>A length of the hand [m] on the paper [mm].</summary>
    public double Mm(double metres) => 1000 * metres / Reduction;

    /// <summary>The same scale elsewhere on the paper.</summary>
    public ViewFrame(ViewFrame like, double widthMm, Place lowerLeft)
    {
        extent = like.extent;
        Reduction = like.Reduction;
        corner = lowerLeft.Moved((widthMm - 1000 * extent.Width / Reduction) / 2, 0);
    }
}
