namespace Heaveline.Parts;

/// <summary>What comes of fitting parts: the car with them, or why they do not fit.</summary>
public abstract record FittingResult;
