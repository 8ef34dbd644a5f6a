#pragma once

namespace loadwarden::simulation {

/// A chamber with a mixture of steam and air, and three temperature sensors. Pressures in kPa
/// absolute, temperatures in degrees Celsius, times in seconds.
class Chamber {
public:
    /// Full of air, at room temperature, the jacket hot.
    explicit Chamber(double atmosphereKPa);

    /// What a controller does in a step of time.
    struct Drive {
        double towards = 0;     ///< pressure that the flow would reach in the end
        double tau = 1;         ///< seconds to come within 1/e of it
        bool evacuates = false; ///< takes steam and air out alike; else steam flows in
        double airDecay = 0;    ///< seconds in which the drain lets 1/e of the air remain; 0: shut
        double leak = 0;        ///< air that comes in, kPa a second
    };
    void step(const Drive& drive, double seconds);

    /// The chamber is opened to filtered air.
    void admitAir(double seconds);

    /// What the steam is hotter than its pressure says, from now on.
    void setSuperheat(double kelvin) { m_superheat = kelvin; }
    /// A share of air that does not leave: its pressure is never below this, from now on.
    void keepAir(double kPa) { m_keptAir = kPa; }

    [[nodiscard]] double pressure() const { return m_steam + m_air; }
    [[nodiscard]] double air() const { return m_air; }
    [[nodiscard]] double keptAir() const { return m_keptAir; }
    [[nodiscard]] double chamberCelsius() const { return m_chamber; }
    [[nodiscard]] double drainCelsius() const { return m_drain; }
    [[nodiscard]] double loadCelsius() const { return m_load; }

private:
    void warm(double seconds);

    double m_atmosphere;
    double m_steam = 0;
    double m_air;
    double m_keptAir = 0;
    double m_superheat = 0;
    double m_chamber = 45;
    double m_drain = 40;
    double m_load = 22;
};

} // namespace loadwarden::simulation
