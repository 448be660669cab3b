using System.Numerics;
using Heaveline.Elements;

namespace Heaveline.Drives.Identification;

/// <summary>
/// The linear half car of one kilogram of sprung mass over frequency, in closed form, with its exact derivatives: what vertical acceleration and
/// pitch rate at the phone answer to the road under the front axle (P) and to the same road under the rear axle (Q), so that a car at any speed
/// answers with P + Q·e^(−sL/V).
/// </summary>
/// <remarks>
/// Each axle by itself, k = ω₀² + 2ζω₀s, t = μ(2πf_hop)² and e = μs² + t per unit of its sprung mass: the road pushes the body with kt/(k + e), the
/// body's own motion holds it with ke/(k + e). Two equations remain, in heave z and pitch θ (nose down). A derivative of the answer is
/// u·(∂force − ∂stiffness·x), u the answer's adjoint, so that all of them cost little more than the answer. Docs: theory/identification.md.
/// </remarks>
internal sealed class HalfCarResponse
{
    /// <summary>Directions a row holds: the value, the derivatives by the car's parameters, the delay's, padded to whole vectors.</summary>
    public const int Width = 16;

    /// <summary>Rows of a frequency: real and imaginary part of acceleration and pitch rate from the front road, then from the rear.</summary>
    public const int Rows = 8;

    /// <summary>Where the derivative by sL/V stands, to be divided by V.</summary>
    public const int Delay = CarParameter.Car + 1;

    /// <summary>
    /// Height of the sprung mass's centre of gravity above the pitch axis, m: its gravity moment. A usual value; it moves pitch little.
    /// </summary>
    public const double GravityHeight = 0.25;

    private readonly double[] values;

    private HalfCarResponse(double[] values) => this.values = values;

    /// <summary>All rows of a frequency, shape (Rows, Width).</summary>
    public ReadOnlySpan<double> At(int frequency) => values.AsSpan(frequency * Rows * Width, Rows * Width);

    /// <summary>Works it out.</summary>
    /// <param name="frequencies">Hz.</param>
    /// <param name="parameters">Shared parameters, <see cref="CarParameter"/>.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="derivatives">Whether derivatives are wanted.</param>
    public static HalfCarResponse Of(ReadOnlySpan<double> frequencies, ReadOnlySpan<double> parameters, double wheelbase, bool derivatives)
    {
        var values = new double[frequencies.Length * Rows * Width];
        var car = new HalfCar(parameters, wheelbase);
        for (var m = 0; m < frequencies.Length; m++)
        {
            car.Write(2.0 * Math.PI * frequencies[m], values.AsSpan(m * Rows * Width, Rows * Width), derivatives);
        }

        return new HalfCarResponse(values);
    }

    /// <summary>One axle at one frequency: forces for each metre of road and of body, and their derivatives.</summary>
    private readonly struct Axle
    {
        public Axle(Complex s, double frequency, double damping, double unsprung, double hop)
        {
            var w0 = 2.0 * Math.PI * frequency;
            var stiff = w0 * w0;
            var damp = 2.0 * damping * w0 * s;
            var k = stiff + damp;
            var tyre = unsprung * (2.0 * Math.PI * hop) * (2.0 * Math.PI * hop);
            var e = (unsprung * s * s) + tyre;
            var d = 1.0 / (k + e);
            var d2 = d * d;
            (Road, Body) = (k * tyre * d, k * e * d);
            var (roadByK, bodyByK, bodyByE) = (tyre * e * d2, e * e * d2, k * k * d2);
            var byFrequency = (2.0 * stiff) + damp;
            (RoadByFrequency, BodyByFrequency) = (roadByK * byFrequency, bodyByK * byFrequency);
            (RoadByDamping, BodyByDamping) = (roadByK * damp, bodyByK * damp);
            (RoadByUnsprung, BodyByUnsprung) = (bodyByE * tyre, bodyByE * e);
            (RoadByHop, BodyByHop) = (2.0 * k * tyre * ((k + e) - tyre) * d2, bodyByE * 2.0 * tyre);
            Wheel = d;
            (Spring, Tyre) = (k, tyre);
        }

        public Complex Road { get; }

        public Complex Body { get; }

        public Complex RoadByFrequency { get; }

        public Complex BodyByFrequency { get; }

        public Complex RoadByDamping { get; }

        public Complex BodyByDamping { get; }

        public Complex RoadByUnsprung { get; }

        public Complex BodyByUnsprung { get; }

        public Complex RoadByHop { get; }

        public Complex BodyByHop { get; }

        public Complex Wheel { get; }

        public Complex Spring { get; }

        public double Tyre { get; }
    }

    /// <summary>The car of a set of parameters.</summary>
    internal readonly struct HalfCar
    {
        private readonly double front, rear, b, c, length, index, phone, gain;
        private readonly (double Frequency, double Damping, double Unsprung, double Hop) ahead, behind;

        public HalfCar(ReadOnlySpan<double> p, double wheelbase)
        {
            length = wheelbase;
            (front, rear) = (p[CarParameter.FrontShare], 1.0 - p[CarParameter.FrontShare]);
            (b, c) = (rear * wheelbase, front * wheelbase);
            index = Math.Exp(p[CarParameter.PitchIndex]);
            phone = b - p[CarParameter.Phone];
            gain = p.Length > CarParameter.Gain ? Math.Exp(p[CarParameter.Gain]) : 1.0;
            ahead = (Math.Exp(p[CarParameter.FrontFrequency]), Math.Exp(p[CarParameter.FrontDamping]), Math.Exp(p[CarParameter.FrontUnsprung]),
                Math.Exp(p[CarParameter.FrontHop]));
            behind = (Math.Exp(p[CarParameter.RearFrequency]), Math.Exp(p[CarParameter.RearDamping]), Math.Exp(p[CarParameter.RearUnsprung]),
                Math.Exp(p[CarParameter.RearHop]));
        }

        /// <summary>The speeds at which both dampers close and the pitch, for each metre of road under one axle.</summary>
        public (Complex Front, Complex Rear, Complex Pitch) Motion(double omega, bool isFront)
        {
            var (s, f, r, inverse) = At(omega);
            var road = isFront ? front * f.Road : rear * r.Road;
            var (z, theta) = inverse.Times(road, isFront ? -b * road : c * road);
            var (zf, zr) = (z - (b * theta), z + (c * theta));
            var ahead = (((f.Spring * zf) + (isFront ? f.Tyre : 0.0)) * f.Wheel) - zf;
            var behind = (((r.Spring * zr) + (isFront ? 0.0 : r.Tyre)) * r.Wheel) - zr;
            return (s * ahead, s * behind, theta);
        }

        /// <summary>Writes the rows of a frequency.</summary>
        public void Write(double omega, Span<double> to, bool derivatives)
        {
            var (s, f, r, inverse) = At(omega);
            // Rows of the answers' adjoints: u·(force, moment).
            var acceleration = inverse.Adjoint(s * s, -phone * s * s);
            var pitch = inverse.Adjoint(0.0, gain * s);
            foreach (var isFront in (ReadOnlySpan<bool>)[true, false])
            {
                var road = isFront ? front * f.Road : rear * r.Road;
                var (z, theta) = inverse.Times(road, isFront ? -b * road : c * road);
                var rows = to[(isFront ? 0 : 4 * Width)..];
                Put(rows, 0, s * s * (z - (phone * theta)), gain * s * theta);
                if (!isFront)
                {
                    var along = s * length;
                    // e^(−sL/V) by ln V is +sL/V of itself.
                    Put(rows, Delay, along * s * s * (z - (phone * theta)), along * gain * s * theta);
                }

                if (!derivatives)
                {
                    continue;
                }

                var (zf, zr) = (z - (b * theta), z + (c * theta));
                var (onFront, onRear) = (isFront ? 1.0 : 0.0, isFront ? 0.0 : 1.0);
                Axle(rows, CarParameter.FrontFrequency, front * ((onFront * f.RoadByFrequency) - (f.BodyByFrequency * zf)), -b);
                Axle(rows, CarParameter.FrontDamping, front * ((onFront * f.RoadByDamping) - (f.BodyByDamping * zf)), -b);
                Axle(rows, CarParameter.FrontUnsprung, front * ((onFront * f.RoadByUnsprung) - (f.BodyByUnsprung * zf)), -b);
                Axle(rows, CarParameter.FrontHop, front * ((onFront * f.RoadByHop) - (f.BodyByHop * zf)), -b);
                Axle(rows, CarParameter.RearFrequency, rear * ((onRear * r.RoadByFrequency) - (r.BodyByFrequency * zr)), c);
                Axle(rows, CarParameter.RearDamping, rear * ((onRear * r.RoadByDamping) - (r.BodyByDamping * zr)), c);
                Axle(rows, CarParameter.RearUnsprung, rear * ((onRear * r.RoadByUnsprung) - (r.BodyByUnsprung * zr)), c);
                Axle(rows, CarParameter.RearHop, rear * ((onRear * r.RoadByHop) - (r.BodyByHop * zr)), c);

                var inertia = index * b * c * s * s;
                Force(rows, CarParameter.PitchIndex, 0.0, -inertia * theta, default);

                // The share moves masses, lever arms, inertia and the phone's place from the centre of gravity.
                var (pushFront, pushRear) = ((onFront * f.Road) - (f.Body * zf), (onRear * r.Road) - (r.Body * zr));
                var (byFront, byRear) = (pushFront - (front * f.Body * length * theta), -pushRear - (rear * r.Body * length * theta));
                var moment = (-b * byFront) + (c * byRear) + (length * front * pushFront) + (length * rear * pushRear)
                    - (index * length * length * (rear - front) * s * s * theta);
                Force(rows, CarParameter.FrontShare, byFront + byRear, moment, length * s * s * theta);
                Force(rows, CarParameter.Phone, 0.0, 0.0, s * s * theta);
            }

            void Axle(Span<double> rows, int parameter, Complex force, double arm) => Force(rows, parameter, force, arm * force, default);

            void Force(Span<double> rows, int parameter, Complex force, Complex moment, Complex direct) => Put(
                rows,
                parameter + 1,
                (acceleration.Force * force) + (acceleration.Moment * moment) + direct,
                (pitch.Force * force) + (pitch.Moment * moment));
        }

        private (Complex S, Axle Front, Axle Rear, Inverse Inverse) At(double omega)
        {
            var s = new Complex(0.0, omega);
            var f = new Axle(s, ahead.Frequency, ahead.Damping, ahead.Unsprung, ahead.Hop);
            var r = new Axle(s, behind.Frequency, behind.Damping, behind.Unsprung, behind.Hop);
            var (kf, kr) = (front * f.Body, rear * r.Body);
            return (s, f, r, new Inverse(
                (s * s) + kf + kr,
                (-b * kf) + (c * kr),
                (index * b * c * s * s) + (b * b * kf) + (c * c * kr) - (Gravity.Standard * GravityHeight)));
        }

        private static void Put(Span<double> rows, int direction, Complex acceleration, Complex pitch)
        {
            (rows[direction], rows[Width + direction]) = (acceleration.Real, acceleration.Imaginary);
            (rows[(2 * Width) + direction], rows[(3 * Width) + direction]) = (pitch.Real, pitch.Imaginary);
        }
    }

    /// <summary>A symmetric matrix of two rows, turned round.</summary>
    private readonly struct Inverse
    {
        private readonly Complex a, b, c;

        public Inverse(Complex a11, Complex a12, Complex a22)
        {
            var one = 1.0 / ((a11 * a22) - (a12 * a12));
            (a, b, c) = (a22 * one, -a12 * one, a11 * one);
        }

        public (Complex Heave, Complex Pitch) Times(Complex force, Complex moment) => ((a * force) + (b * moment), (b * force) + (c * moment));

        public (Complex Force, Complex Moment) Adjoint(Complex heave, Complex pitch) => Times(heave, pitch);
    }
}
