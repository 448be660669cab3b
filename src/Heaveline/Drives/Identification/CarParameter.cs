namespace Heaveline.Drives.Identification;

/// <summary>Places of the parameters that all windows share: the car's, the road's and the phone's.</summary>
internal static class CarParameter
{
    public const int FrontFrequency = 0;
    public const int RearFrequency = 1;
    public const int FrontDamping = 2;
    public const int RearDamping = 3;
    public const int PitchIndex = 4;
    public const int FrontShare = 5;
    public const int Phone = 6;
    public const int FrontUnsprung = 7;
    public const int RearUnsprung = 8;
    public const int FrontHop = 9;
    public const int RearHop = 10;

    /// <summary>How many are the car's: logarithms but for front share and the phone's distance behind the front axle.</summary>
    public const int Car = 11;

    /// <summary>ln of the displacement density at 0.1 cycles/m, m³.</summary>
    public const int Roughness = 11;

    /// <summary>ln of the vertical noise density.</summary>
    public const int VerticalNoise = 12;

    /// <summary>ln of the noise density of the pitch rate.</summary>
    public const int PitchNoise = 13;

    /// <summary>ln of the gyro's gain over the accelerometer's.</summary>
    public const int Gain = 14;

    /// <summary>How many are shared by all windows.</summary>
    public const int Shared = 15;

    /// <summary>Each window's own: ln of its speed over the one said.</summary>
    public const int Speed = 0;

    /// <summary>Each window's own: its onset after the one guessed, s.</summary>
    public const int Onset = 1;

    /// <summary>Each window's own: ln of the speed between the axles over its speed.</summary>
    public const int Delay = 2;

    /// <summary>How many are a window's own.</summary>
    public const int Own = 3;
}
