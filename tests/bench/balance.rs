//! The daily balance natively: `cargo bench`.

mod kernel;

fn main() {
    let start = std::time::Instant::now();
    println!("{}", kernel::table(&kernel::time(|| start.elapsed().as_secs_f64() * 1e3)));
}
