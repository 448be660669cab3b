namespace Heaveline.Elements;

/// <summary>
/// What a solver makes of each kind of law. A new law adds a member here, and no solver compiles until it says what it makes of it, or refuses it by
/// name.
/// </summary>
internal interface ILawReader<out TResult>
{
    TResult Read(StraightLaw law);

    TResult Read(GasLaw law);

    TResult Read(PowerLaw law);
}
