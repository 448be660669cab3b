using Heaveline.Modes;
using Heaveline.Numerics;

namespace Heaveline.Passes.Exact;

/// <summary>Finds the first moment at which an element leaves its piece or a tyre its contact, and changes the regime there.</summary>
internal sealed class ExactEvents(ExactCar car, ExactRegime regime, ExactSeries series)
{
    // How far past its limit a tyre force goes before the contact changes, as a share of the static load.
    private const double ContactMargin = 1e-12;

    private readonly double[] signal = new double[series.Order + 1];
    private readonly double[] room = new double[series.Order + 1];
    private int element;
    private int step;
    private int tyre;
    private ExactContact contact;

    /// <summary>The element that the event last found belongs to, in words.</summary>
    public string Name => element >= 0 ? car.Elements[element].Name : $"{CornerNames.Of(tyre, hasSides: true)} tyre ({contact})";

    /// <summary>Time from now to the first event in [0, end], s; infinite when there is none.</summary>
    public double First(double end)
    {
        var first = double.PositiveInfinity;
        for (var e = 0; e < car.Elements.Count; e++)
        {
            var law = car.Elements[e].Law;
            var piece = regime.Piece[e];
            var margin = car.Elements[e].Margin;
            ReadSignal(car.Elements[e]);
            if (piece > 0 && Leaves(+1.0, margin - law.Borders[piece - 1], ref first, ref end))
            {
                (element, step) = (e, -1);
            }

            if (piece < law.Borders.Length && Leaves(-1.0, margin + law.Borders[piece], ref first, ref end))
            {
                (element, step) = (e, +1);
            }
        }

        for (var i = 0; i < 4; i++)
        {
            FindContact(i, ref first, ref end);
        }

        return first;
    }

    /// <summary>Changes the regime by the event last found. To be called before the series moves on.</summary>
    /// <param name="after">Time of the event from the series' moment, s.</param>
    public void Apply(double after)
    {
        if (element >= 0)
        {
            regime.Piece[element] += step;
            regime.Rebuild();
            return;
        }

        if (contact == ExactContact.Pushing && regime.Contact[tyre] == ExactContact.Clear)
        {
            // Landing: the damping acts at once, unless it would pull.
            Read(series.Tyre, tyre);
            contact = Polynomial.Value(signal, after) + car.Load[tyre] > 0.0 ? ExactContact.Pushing : ExactContact.Slack;
        }

        regime.Contact[tyre] = contact;
    }

    private void FindContact(int i, ref double first, ref double end)
    {
        var load = car.Load[i];
        var margin = ContactMargin * load;
        var damped = car.TyreDamping[i] > 0.0;
        switch (regime.Contact[i])
        {
            case ExactContact.Pushing:
                // A damped tyre that leaves the road passes through slack first: as it stretches, c·ṫ is below zero.
                Read(damped ? series.Tyre : series.Elastic, i);
                Contacts(+1.0, load + margin, i, damped ? ExactContact.Slack : ExactContact.Clear, ref first, ref end);
                break;
            case ExactContact.Slack:
                Read(series.Elastic, i);
                Contacts(+1.0, load + margin, i, ExactContact.Clear, ref first, ref end);
                Read(series.Tyre, i);
                Contacts(-1.0, margin - load, i, ExactContact.Pushing, ref first, ref end);
                break;
            default:
                Read(series.Elastic, i);
                Contacts(-1.0, margin - load, i, ExactContact.Pushing, ref first, ref end);
                break;
        }
    }

    private void Contacts(double side, double offset, int i, ExactContact next, ref double first, ref double end)
    {
        if (Leaves(side, offset, ref first, ref end))
        {
            (element, tyre, contact) = (-1, i, next);
        }
    }

    // Whether side·signal + offset falls below zero before anything found so far.
    private bool Leaves(double side, double offset, ref double first, ref double end)
    {
        for (var k = 0; k < room.Length; k++)
        {
            room[k] = side * signal[k];
        }

        room[0] += offset;
        var at = FirstCrossing.Below(room, end);
        if (!(at < first))
        {
            return false;
        }

        first = end = at;
        return true;
    }

    private void ReadSignal(ExactElement source)
    {
        var from = source.OnRates ? series.Rate : series.Position;
        for (var k = 0; k < signal.Length; k++)
        {
            var sum = 0.0;
            for (var i = 0; i < source.Row.Length; i++)
            {
                sum += source.Row[i] * from[k, i];
            }

            signal[k] = sum;
        }
    }

    private void Read(double[,] from, int column)
    {
        for (var k = 0; k < signal.Length; k++)
        {
            signal[k] = from[k, column];
        }
    }
}
