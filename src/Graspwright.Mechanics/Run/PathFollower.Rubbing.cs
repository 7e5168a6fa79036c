using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>Which places slide and which stick where the path leaves a state: decided by rates, no step is tried.</content>
internal sealed partial class PathFollower
{
    /// <summary>Brings the modes of all places in line with the rates at the accepted state.</summary>
    /// <param name="justSwitched">The place whose own event this is; −1 for none. It is not taken back: others may have held it wrongly.</param>
    private void SettlePlaces(int justSwitched)
    {
        if (!_eq.HasFriction)
        {
            return;
        }

        SettleSlides(justSwitched);
        for (int round = 0; round < 2 * _eq.Places.Length; round++)
        {
            // Where many stand at their bounds at once, at rest and at reversal, the one pushed hardest leads.
            bool together = justSwitched >= 0 && round < TogetherRounds;
            int worst = WorstStick(justSwitched, together, out bool upper);
            if (worst < 0)
            {
                return;
            }

            if (!together)
            {
                SwitchCounted(worst, upper);
            }

            FindRates();
            SettleSlides(together ? -1 : worst);
        }
    }

    /// <summary>Rounds in which every place that is wrong is switched at once, which nearly always settles them; then the worst alone, which cannot go round in circles.</summary>
    private const int TogetherRounds = 3;

    /// <summary>Places that would slide against the sense of their friction stick instead, until none is left.</summary>
    private void SettleSlides(int justSwitched)
    {
        for (int round = 0; round < 4 * _eq.Places.Length; round++)
        {
            int worst = -1;
            double value = -SlideNoise;
            for (int i = 0; i < _eq.Places.Length; i++)
            {
                ref RubbingPlace p = ref _eq.Places[i];
                double along = p.Mode * _direction * _rub.Slide[i];
                if (!p.Active || i == justSwitched || !(along < value))
                {
                    continue;
                }

                worst = i;
                if (round < TogetherRounds)
                {
                    SwitchCounted(i, true);
                }
                else
                {
                    value = along;
                }
            }

            if (worst < 0)
            {
                return;
            }

            if (round >= TogetherRounds)
            {
                SwitchCounted(worst, true);
            }

            FindRates();
        }
    }

    private void SwitchCounted(int place, bool upper)
    {
        _switchedHere[_slideWatch + place]++;
        SwitchPlace(place, upper);
    }

    /// <summary>
    /// Sticking starts to slide the way it is pushed; sliding that comes to rest sticks. One that nothing presses yet turns
    /// round at once instead, and sticks where it does not like that way either.
    /// </summary>
    private void SwitchPlace(int place, bool upper)
    {
        ref RubbingPlace p = ref _eq.Places[place];
        if (p.Mode == 0)
        {
            p.Mode = upper ? 1 : -1;
            return;
        }

        p.Mode = p.IsLoaded || _switchedHere[_slideWatch + place] > 1 ? 0 : -p.Mode;
    }

    /// <summary>The place that sticks at its bound and is pushed over it hardest by the motion to come; −1 for none. Together: all such are switched, and the last is given.</summary>
    private int WorstStick(int except, bool together, out bool upper)
    {
        int worst = -1;
        double value = -StickRateNoise;
        upper = false;
        for (int i = 0; i < _eq.Places.Length; i++)
        {
            ref RubbingPlace p = ref _eq.Places[i];
            if (!p.Active || p.Mode != 0 || i == except || _switchedHere[_slideWatch + i] > SwitchLimit)
            {
                continue;
            }

            for (int side = 1; side >= -1; side -= 2)
            {
                double left = side > 0 ? p.High - p.Friction : p.Friction - p.Low;
                if (left > StickNoise * p.Stiffness)
                {
                    continue;
                }

                double rate = side * _direction * ((side > 0 ? _rub.High[i] : _rub.Low[i]) - _rub.Friction[i]) / p.Stiffness;
                if (!(rate < value))
                {
                    continue;
                }

                (worst, upper) = (i, side > 0);
                if (together)
                {
                    SwitchCounted(i, upper);
                    break;
                }

                value = rate;
            }
        }

        return worst;
    }
}
