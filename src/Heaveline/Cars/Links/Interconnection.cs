namespace Heaveline.Cars;

/// <summary>What joins the front and the rear suspension of one side; the other side has the same.</summary>
public abstract record Interconnection;
