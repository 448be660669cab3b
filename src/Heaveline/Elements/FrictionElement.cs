namespace Heaveline.Elements;

/// <summary>Dry friction of a corner, at the wheel.</summary>
internal static class FrictionElement
{
    /// <summary>The friction; null without any.</summary>
    public static Element? Of(CornerPlace place)
    {
        var friction = place.Axle.Friction;
        return friction.HalfWidth.Si > 0.0
            ? new Element
            {
                Name = "friction",
                Cause = StepCause.Friction,
                Corner = place.Corner,
                Sight = Sight.Along(place.Corner),
                Slider = new Slider(place.Half * friction.HalfWidth.Si, friction.PreSliding.Si, friction.SpeedScale.Si),
                Felt = place.FeltByOwn(),
            }
            : null;
    }
}
