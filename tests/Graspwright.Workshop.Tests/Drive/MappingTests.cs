using Graspwright.Hand;
using Graspwright.Mechanics.Objects;
using Graspwright.Workshop.Drive;
using Engine = Graspwright.Mechanics.Drive;

namespace Graspwright.Workshop.Tests.Drive;

public sealed class MappingTests
{
    [Fact]
    public void Carries_every_value_that_the_engine_reads()
    {
        HandModel hand = MadeHand.Boatyard();
        Engine.DriveModel drive = DriveMapping.ToDrive(hand);

        Assert.Equal(hand.Wrist.TravelRadians, drive.Wrist.TravelRadians);
        Assert.Equal(hand.Give.CuffStiffness, drive.Joint.CuffStiffness);
        Assert.True(drive.Joint.HasGimbal);
        Assert.Equal(hand.Gimbal!.Offset.X, drive.Joint.GimbalOffset.X);
        Assert.Equal(hand.PullLink.Anchor.Y, drive.PullLink.Anchor.Y);
        Assert.Equal(hand.Crank.Slot!.Preload, drive.Crank.Slot!.Preload);
        Assert.Equal(hand.Rail.GuideLength, drive.Rail.GuideLength);
        Assert.Equal(hand.Friction.Slot, drive.Friction.Slot);
        Assert.Equal(hand.Fingers.Select(f => f.Name), drive.Fingers.Select(f => f.Name));
        Assert.Equal(hand.Fingers[3].SplayRadians, drive.Fingers[3].SplayRadians);
        Assert.Equal(hand.Fingers[0].Drag.Second, drive.Fingers[0].Drag.Second);
        Engine.BalanceBar root = Assert.IsType<Engine.BalanceBar>(drive.Tree);
        Assert.Equal(2, Assert.IsType<Engine.FingerLeaf>(Assert.IsType<Engine.BalanceBar>(root.Second).First).FingerIndex);
    }

    [Fact]
    public void Takes_the_capacity_of_the_driving_direction()
    {
        HandModel hand = MadeHand.Boatyard();
        HandModel back = hand with { Wrist = hand.Wrist with { Direction = DrivingDirection.Extension } };
        Assert.Equal(hand.Wrist.FlexionCapacity.MomentsNewtonMetres, DriveMapping.ToDrive(hand).Wrist.Capacity.MomentsNewtonMetres);
        Assert.Equal(hand.Wrist.ExtensionCapacity.MomentsNewtonMetres, DriveMapping.ToDrive(back).Wrist.Capacity.MomentsNewtonMetres);
        Assert.Equal(Engine.DrivingDirection.Extension, DriveMapping.ToDrive(back).Wrist.Direction);
    }

    [Fact]
    public void Puts_worn_play_in_place_of_new()
    {
        HandModel hand = MadeHand.Boatyard();
        Assert.True(DriveMapping.GivesWear(hand));
        Assert.Equal(hand.Crank.FulcrumPin.Play, DriveMapping.ToDrive(hand).Crank.FulcrumPlay);
        Assert.Equal(hand.Crank.FulcrumPin.WornPlay, DriveMapping.ToDrive(hand, worn: true).Crank.FulcrumPlay);
        Assert.Equal(hand.Fingers[1].WornPlay.Third, DriveMapping.ToDrive(hand, worn: true).Fingers[1].Play.Third);
    }

    [Fact]
    public void Lays_a_cylinder_on_the_palm_and_a_plate_on_the_thumb()
    {
        HandModel hand = MadeHand.Boatyard();
        CylinderObject mug = new("mug", 0.060, new OnPalm(0.072));
        Cylinder held = Assert.IsType<Cylinder>(HoldMapping.ToHeld(hand, mug));
        Assert.Equal(0.030, held.Radius);
        Assert.Equal(hand.Palm.Point.Y - 0.030, held.Centre.Y, 1e-12); // the boatyard palm line runs along x

        PlateObject plate = new("plate", new(0.1, -0.05), Math.PI / 2, 0.003);
        Face face = Assert.IsType<Face>(HoldMapping.ToHeld(hand, plate));
        Assert.Equal(-0.047, face.Point.Y, 1e-12);
        Assert.IsType<NoObject>(HoldMapping.ToHeld(hand, new NothingHeld("air")));
    }

    [Fact]
    public void Names_locked_fingers_by_index_with_their_limits()
    {
        HandModel hand = MadeHand.Boatyard();
        LockPattern pattern = new("hold", [new("little", 0.1, HoldsPull: false, MayCarry: 80)]);
        var locked = Assert.Single(HoldMapping.ToLocks(hand, pattern));
        Assert.Equal((3, 0.1, false), (locked.FingerIndex, locked.AtRadians, locked.HoldsPull));
        Assert.Equal([null, null, null, 80], HoldMapping.LockLimits(hand, pattern));
        Assert.Empty(HoldMapping.ToLocks(hand, null));
        Assert.Throws<ArgumentException>(() => DriveMapping.IndexOf(hand.Fingers, "thumb"));
    }
}
