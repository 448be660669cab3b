namespace Heaveline.Elements;

/// <summary>
/// Force of an element with its rate ∂F/∂s and its damping ∂F/∂ṡ: at rest, or their means E[F], E[∂F/∂s] and E[∂F/∂ṡ] under a Gaussian motion.
/// </summary>
internal readonly record struct ElementMean(double Force, double Rate, double Damping);
